import type { ChangeKind } from '../../../shared/contract/change.ts';
import type { Caution } from '../../../state-machines/triage/changes/catalogue.ts';

type Words = { label: string; instructions: string; afterwards: string };

/** Die Vorsicht, die immer gilt; Recht, Vorschriften und zugelassene Betriebe gehen vor. */
export const cautionsInGerman: Record<Caution, string> = {
  ladder:
    'Ein Projektor kann hoch hängen: Nimm eine Leiter, die sicher steht, lass sie halten, und beug dich nie zur Seite.',
  projectorLight:
    'Sieh nie in das Objektiv, solange Lampe oder Laser an ist; schalte den Projektor aus und lass ihn abkühlen, bevor du daran arbeitest.',
  opticalCable:
    'Ein aktives optisches Kabel führt Laserlicht: Sieh nicht in seine Enden, öffne keinen Stecker, knick es nicht.',
  mains:
    'In Racks und Geräten ist Netzspannung: Schalte aus und zieh den Netzstecker, bevor du dahinter greifst, öffne kein Gehäuse; an Netzleitungen arbeitet nur eine Elektrofachkraft.',
  floorCable:
    'Über ein Kabel am Boden stolpert man: Leg es nicht durch Türen, kleb es fest oder deck es ab, sag es allen im Raum, und nimm es mit, wenn du gehst.',
  wallCable:
    'Kabel in Wänden brauchen die Brandklasse, die örtliche Vorschriften verlangen; Wände und Brandschotts öffnen nur zugelassene Betriebe.',
  conduit:
    'Sieh nach, was sonst im Rohr liegt, und zieh nie neben Netzleitungen ein; die Brandklasse des Kabels muss den örtlichen Vorschriften genügen.',
  lifting: 'Anzeigen und Prozessoren sind schwer und kippen: zu zweit heben.',
  firmware:
    'Der Strom darf während des Updates nicht ausfallen, schalte nicht aus, und schreib vorher alle Einstellungen auf: Ein Update kann sie zurücksetzen.',
};

export const menuInGerman: Words = {
  label: 'Menü zeigen',
  instructions:
    'Ruf das Menü mit der Fernbedienung auf und lass es im Bild stehen. Wenn der Fehler kommt, sieh auf das Menü: Bleibt es, oder verschwindet es mit dem Bild?',
  afterwards: 'Nimm das Menü danach wieder aus dem Bild.',
};

export const changesInGerman: Record<ChangeKind, Words> = {
  reseat: {
    label: 'Beide Stecker neu stecken',
    instructions:
      'Schalte beide Geräte in Bereitschaft. Zieh den Stecker an jedem Ende, such nach verbogenen Kontakten und Schmutz, und steck ihn ganz ein. Fass kein anderes Kabel an.',
    afterwards: 'Nichts zurückzubauen.',
  },
  replaceCable: {
    label: 'Kabel ersetzen',
    instructions:
      'Steck ein Kabel, das sicher gut ist, in dieselben zwei Buchsen. Ein gerichtetes Kabel kommt mit dem Quellenende an die Quelle; versorg es mit Strom, wo der Hersteller das verlangt. Zeichne das alte Kabel und heb es auf.',
    afterwards: 'Behalte das neue Kabel, wenn der Fehler weg ist; sonst kommt das alte zurück.',
  },
  temporaryCable: {
    label: 'Kabel vorübergehend über den Boden legen',
    instructions:
      'Leg ein Kabel, das sicher gut ist, offen von Buchse zu Buchse, und lass das feste Kabel liegen, beide Stecker gezogen.',
    afterwards: 'Nimm das Kabel auf und steck das feste wieder in dieselben zwei Buchsen.',
  },
  otherSource: {
    label: 'Stattdessen eine andere Quelle abspielen',
    instructions:
      'Lass jedes Kabel, wie es ist, und spiel diese Quelle mit Inhalt gleicher Art und gleichen Formats. Zeigt die Quelle selbst den Fehler, setz eine mitgebrachte an ihre Stelle, in dieselbe Buchse.',
    afterwards:
      'Wähl wieder die übliche Quelle; eine mitgebrachte kommt weg und die alte in dieselbe Buchse.',
  },
  sourceIntoProcessor: {
    label: 'Quelle direkt in den Prozessor stecken',
    instructions:
      'Nimm alles zwischen dieser Quelle und dem Prozessor heraus: ein Kabel von der Quelle zu einem Eingang des Prozessors, und diesen Eingang wählen. Der Ton kann solange fehlen.',
    afterwards: 'Steck die Quelle zurück und wähl wieder den alten Eingang.',
  },
  bypassDevice: {
    label: 'Gerät umgehen',
    instructions:
      'Verbinde, was das Gerät speist, direkt mit dem, was folgt. Verlängerungen kommen zu zweit: nimm beide Enden heraus.',
    afterwards: 'Setz das Gerät wieder zwischen dieselben zwei Buchsen.',
  },
  unplugBranch: {
    label: 'Parallelen Zweig abziehen',
    instructions:
      'Zieh den Stecker dieses Zweigs an dem Gerät, das ihn speist. Eine Anzeige in Bereitschaft wirkt mit, solange sie steckt.',
    afterwards: 'Steck den Zweig wieder in dieselbe Buchse.',
  },
  movePort: {
    label: 'An eine andere Buchse umstecken',
    instructions:
      'Steck diesen Stecker in eine freie Buchse desselben Geräts, gleicher Richtung, mit gleichen Fähigkeiten und Einstellungen, und wähl sie.',
    afterwards: 'Lass ihn dort, wenn der Fehler weg ist; sonst steck ihn zurück.',
  },
  raisePortMode: {
    label: 'Betriebsart der Buchse anheben',
    instructions:
      'Stell diese Buchse auf die höchste Betriebsart, die sie hat. Sag die Einstellung an und lies die Einstellungen vorher und nachher aus.',
    afterwards: 'Die höchste Betriebsart darf bleiben. Muss sie zurück, stell ein, was vorher war.',
  },
  disableProcessing: {
    label: 'Bildverarbeitung und EDID-Verwaltung abschalten',
    instructions:
      'Schalte Skalierung, Wandlung, Bildverarbeitung und EDID-Verwaltung in diesem Gerät ab, sodass es weitergibt, was es bekommt. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards: 'Lass es ab, wenn der Fehler weg ist; sonst stell alles zurück.',
  },
  limitInputBandwidth: {
    label: 'Angebotene Eingangsbandbreite auf 9 Gbit/s begrenzen',
    instructions:
      'Stell die angebotene Bandbreite des Eingangs auf 9 Gbit/s, dann starte dieses Gerät und die Quelle neu, damit die Quelle sie neu liest. Sag die Einstellung an.',
    afterwards: 'Stell auf automatisch zurück und starte beide neu.',
  },
  limitOutputBandwidth: {
    label: 'Ausgangsbandbreite auf 9 Gbit/s begrenzen',
    instructions:
      'Stell den Ausgang dieses Geräts auf höchstens 9 Gbit/s (niedrigere Rate, 8 Bit oder 4:2:0), damit das Kabel dahinter weniger trägt. Sag die Einstellung an.',
    afterwards: 'Stell den Ausgang zurück, meist auf automatisch.',
  },
  reissueHotPlug: {
    label: 'Hot-Plug neu auslösen',
    instructions:
      'Lass dieses Gerät seiner Quelle Hot-Plug neu melden, über sein Menü oder die Fernbedienung, ohne einen Stecker anzufassen, und merk dir, was geschieht. Das ist Auskunft, nie eine Reparatur.',
    afterwards: 'Nichts zurückzubauen: als zurückgebaut abschließen.',
  },
  insertSyncSwitch: {
    label: 'Umschalter einsetzen, der den Takt erneuert',
    instructions:
      'Setz den Umschalter in diese Verbindung, am Ende näher zur Anzeige, mit abgeschalteter Skalierung und eigenem EDID.',
    afterwards: 'Er darf bleiben, wenn der Fehler weg ist; sonst nimm ihn heraus und verbinde wie vorher.',
  },
  moveProcessorToDisplay: {
    label: 'Prozessor neben die Anzeige stellen',
    instructions:
      'Stell den Prozessor neben die Anzeige und verbinde beide mit dem kurzen passiven Kabel. Nur zur Fehlersuche.',
    afterwards: 'Bring den Prozessor zurück und verbinde beide Strecken wie vorher.',
  },
  substituteDisplay: {
    label: 'Andere Anzeige anschließen',
    instructions:
      'Steck das Kabel zur Anzeige in eine andere. Eine Anzeige mit anderem Kopierschutz änderte zwei Dinge auf einmal.',
    afterwards: 'Steck das Kabel wieder in dieselbe Buchse der Anzeige.',
  },
  restoreSettings: {
    label: 'Frühere Einstellungen wiederherstellen',
    instructions:
      'Stell dieses Gerät ein wie zu der Zeit, als alles ging. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards:
      'Die früheren Einstellungen dürfen bleiben. Müssen sie zurück, stell ein, was vorher ausgelesen wurde.',
  },
  updateFirmware: {
    label: 'Firmware aktualisieren',
    instructions:
      'Schreib die Einstellungen auf, aktualisiere nach der Anleitung des Herstellers und stell ein, was das Update zurückgesetzt hat. Lies Firmware-Stand und Einstellungen vorher und nachher aus.',
    afterwards: 'Das lässt sich nicht rückgängig machen: behalten, was immer der Nachtest sagt.',
  },
};
