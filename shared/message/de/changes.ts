import type { changeCodes, needCodes } from '../codes/changes.ts';
import type { Case, Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

type Name = (as?: Case) => string;
type Words = {
  /** What it is called, on screens and inside sentences. */
  label: string;
  /** What to do; asks for the place's name in the case that it takes. */
  order: (name: Name) => string;
  instructions: string;
  afterwards: string;
};
const words: { readonly [Kind in Kinds['changeKind']]: Words } = {
  reseat: {
    label: 'Beide Stecker neu stecken',
    order: (name) => `Steck die Stecker neu an ${name('dative')}`,
    instructions:
      'Schalte beide Geräte in Bereitschaft. Zieh den Stecker an jedem Ende, such nach verbogenen Kontakten und Schmutz, und steck ihn ganz ein. Fass kein anderes Kabel an.',
    afterwards: 'Nichts zurückzubauen.',
  },
  replaceCable: {
    label: 'Kabel ersetzen',
    order: (name) => `Ersetz ${name('accusative')}`,
    instructions:
      'Steck ein Kabel, das sicher gut ist, in dieselben zwei Buchsen. Ein gerichtetes Kabel kommt mit dem Quellenende an die Quelle; versorg es mit Strom, wo der Hersteller das verlangt. Zeichne das alte Kabel und heb es auf.',
    afterwards: 'Behalte das neue Kabel, wenn der Fehler weg ist; sonst kommt das alte zurück.',
  },
  temporaryCable: {
    label: 'Kabel vorübergehend über den Boden legen',
    order: (name) => `Leg vorübergehend ein Kabel als Ersatz für ${name('accusative')}`,
    instructions:
      'Leg ein Kabel, das sicher gut ist, offen von Buchse zu Buchse, und lass das feste Kabel liegen, beide Stecker gezogen.',
    afterwards: 'Nimm das Kabel auf und steck das feste wieder in dieselben zwei Buchsen.',
  },
  otherSource: {
    label: 'Stattdessen eine andere Quelle abspielen',
    order: (name) => `Spiel stattdessen von ${name('dative')}`,
    instructions:
      'Lass jedes Kabel, wie es ist, und spiel diese Quelle mit Inhalt gleicher Art und gleichen Formats. Zeigt die Quelle selbst den Fehler, setz eine mitgebrachte an ihre Stelle, in dieselbe Buchse.',
    afterwards:
      'Wähl wieder die übliche Quelle; eine mitgebrachte kommt weg und die alte in dieselbe Buchse.',
  },
  sourceIntoProcessor: {
    label: 'Quelle direkt in den Prozessor stecken',
    order: (name) => `Steck direkt in den Prozessor: ${name()}`,
    instructions:
      'Nimm alles zwischen dieser Quelle und dem Prozessor heraus: ein Kabel von der Quelle zu einem Eingang des Prozessors, und diesen Eingang wählen. Der Ton kann solange fehlen.',
    afterwards: 'Steck die Quelle zurück und wähl wieder den alten Eingang.',
  },
  bypassDevice: {
    label: 'Gerät umgehen',
    order: (name) => `Umgeh ${name('accusative')}`,
    instructions:
      'Verbinde, was das Gerät speist, direkt mit dem, was folgt. Verlängerungen kommen zu zweit: nimm beide Enden heraus.',
    afterwards: 'Setz das Gerät wieder zwischen dieselben zwei Buchsen.',
  },
  unplugBranch: {
    label: 'Parallelen Zweig abziehen',
    order: (name) => `Zieh den Zweig ab: ${name()}`,
    instructions:
      'Zieh den Stecker dieses Zweigs an dem Gerät, das ihn speist. Eine Anzeige in Bereitschaft wirkt mit, solange sie steckt.',
    afterwards: 'Steck den Zweig wieder in dieselbe Buchse.',
  },
  movePort: {
    label: 'An eine andere Buchse umstecken',
    order: (name) => `Steck an eine andere Buchse um: ${name()}`,
    instructions:
      'Steck diesen Stecker in eine freie Buchse desselben Geräts, gleicher Richtung, mit gleichen Fähigkeiten und Einstellungen, und wähl sie.',
    afterwards: 'Lass ihn dort, wenn der Fehler weg ist; sonst steck ihn zurück.',
  },
  raisePortMode: {
    label: 'Betriebsart der Buchse anheben',
    order: (name) => `Heb die Betriebsart an: ${name()}`,
    instructions:
      'Stell diese Buchse auf die höchste Betriebsart, die sie hat. Sag die Einstellung an und lies die Einstellungen vorher und nachher aus.',
    afterwards: 'Die höchste Betriebsart darf bleiben. Muss sie zurück, stell ein, was vorher war.',
  },
  disableProcessing: {
    label: 'Bildverarbeitung und EDID-Verwaltung abschalten',
    order: (name) => `Schalte an ${name('dative')} Bildverarbeitung und EDID-Verwaltung ab`,
    instructions:
      'Schalte Skalierung, Wandlung, Bildverarbeitung und EDID-Verwaltung in diesem Gerät ab, sodass es weitergibt, was es bekommt. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards: 'Lass es ab, wenn der Fehler weg ist; sonst stell alles zurück.',
  },
  limitInputBandwidth: {
    label: 'Angebotene Eingangsbandbreite auf 9 Gbit/s begrenzen',
    order: (name) => `Begrenz den Eingang von ${name('dative')} auf 9 Gbit/s`,
    instructions:
      'Stell die angebotene Bandbreite des Eingangs auf 9 Gbit/s, dann starte dieses Gerät und die Quelle neu, damit die Quelle sie neu liest. Sag die Einstellung an.',
    afterwards: 'Stell auf automatisch zurück und starte beide neu.',
  },
  limitOutputBandwidth: {
    label: 'Ausgangsbandbreite auf 9 Gbit/s begrenzen',
    order: (name) => `Begrenz den Ausgang von ${name('dative')} auf 9 Gbit/s`,
    instructions:
      'Stell den Ausgang dieses Geräts auf höchstens 9 Gbit/s (niedrigere Rate, 8 Bit oder 4:2:0), damit das Kabel dahinter weniger trägt. Sag die Einstellung an.',
    afterwards: 'Stell den Ausgang zurück, meist auf automatisch.',
  },
  reissueHotPlug: {
    label: 'Hot-Plug neu auslösen',
    order: (name) => `Lös an ${name('dative')} Hot-Plug neu aus`,
    instructions:
      'Lass dieses Gerät seiner Quelle Hot-Plug neu melden, über sein Menü oder die Fernbedienung, ohne einen Stecker anzufassen, und merk dir, was geschieht. Das ist Auskunft, nie eine Reparatur.',
    afterwards: 'Nichts zurückzubauen: als zurückgebaut abschließen.',
  },
  insertSyncSwitch: {
    label: 'Umschalter einsetzen, der den Takt erneuert',
    order: (name) => `Setz in ${name('accusative')} einen Umschalter ein, der den Takt erneuert`,
    instructions:
      'Setz den Umschalter in diese Verbindung, am Ende näher zur Anzeige, mit abgeschalteter Skalierung und eigenem EDID.',
    afterwards: 'Er darf bleiben, wenn der Fehler weg ist; sonst nimm ihn heraus und verbinde wie vorher.',
  },
  moveProcessorToDisplay: {
    label: 'Prozessor neben die Anzeige stellen',
    order: (name) => `Stell neben die Anzeige: ${name()}`,
    instructions:
      'Stell den Prozessor neben die Anzeige und verbinde beide mit dem kurzen passiven Kabel. Nur zur Fehlersuche.',
    afterwards: 'Bring den Prozessor zurück und verbinde beide Strecken wie vorher.',
  },
  substituteDisplay: {
    label: 'Andere Anzeige anschließen',
    order: (name) => `Tausch ${name('accusative')} gegen eine andere Anzeige`,
    instructions:
      'Steck das Kabel zur Anzeige in eine andere. Eine Anzeige mit anderem Kopierschutz änderte zwei Dinge auf einmal.',
    afterwards: 'Steck das Kabel wieder in dieselbe Buchse der Anzeige.',
  },
  restoreSettings: {
    label: 'Frühere Einstellungen wiederherstellen',
    order: (name) => `Stell an ${name('dative')} frühere Einstellungen wieder her`,
    instructions:
      'Stell dieses Gerät ein wie zu der Zeit, als alles ging. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards:
      'Die früheren Einstellungen dürfen bleiben. Müssen sie zurück, stell ein, was vorher ausgelesen wurde.',
  },
  updateFirmware: {
    label: 'Firmware aktualisieren',
    order: (name) => `Aktualisier die Firmware von ${name('dative')}`,
    instructions:
      'Schreib die Einstellungen auf, aktualisiere nach der Anleitung des Herstellers und stell ein, was das Update zurückgesetzt hat. Lies Firmware-Stand und Einstellungen vorher und nachher aus.',
    afterwards: 'Das lässt sich nicht rückgängig machen: behalten, was immer der Nachtest sagt.',
  },
};

const verdicts = {
  cleared: 'Das hat den Fehler behoben',
  persists: 'Das hat den Fehler nicht behoben',
  inconclusive: 'Das sagt noch nichts',
};
const named = (change: keyof typeof words, say: Say): string => `„${say.change(change)}“`;

export const changesDe: Sentences<typeof changeCodes> = {
  changeName: ({ change }) => words[change].label,
  changeAt: ({ change, place }, say) => `${say.change(change)}: ${say.place(place)}`,
  changeOrder: ({ change, place }, say) => words[change].order((as) => say.place(place, as)),
  playBroughtSource: ({ place }, say) =>
    `Spiel von einer mitgebrachten Quelle statt von ${say.place(place, 'dative')}`,
  changeInstructions: ({ change }) => words[change].instructions,
  changeAfterwards: ({ change }) => words[change].afterwards,
  changeDeclared: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${words[change].instructions}`,
  changeJudged: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${verdicts[verdict]}. ${words[change].afterwards}`,
  changeStillFails: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut, und der Fehler kommt noch: Bewerte es und bau es zurück.`,
  changeQuietLongEnough: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut, und es war lang genug ruhig: Beende die Beobachtung und bewerte.`,
  changeWatchMinutes: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${say.minutesNeeded(minutes)} ohne den Fehler, um es behoben zu nennen.`,
  changeWatchTries: ({ change, place, tries }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${tries} ${say.plural(tries, 'Versuch', 'Versuche')} hintereinander ohne den Fehler, um es behoben zu nennen.`,
  changeWatch: ({ change, place, how }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${say.message(how)}`,
  changeFaultIsBack: ({ change, place }, say) =>
    `Alles ist, wie es war, und der Fehler ist wieder da: Was ihn wegnimmt, ist ${named(change, say)}, ${say.place(place)}.`,
  changeWaitForReturn: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat ihn behoben, und alles ist, wie es war. Beobachte, bis der Fehler wiederkommt. Erst dann ist es nachgewiesen.`,
  changeWaitForReturnEvery: ({ change, place, everyMin }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat ihn behoben, und alles ist, wie es war. Beobachte, bis der Fehler wiederkommt: Vorher kam er alle ${say.minutesNeeded(everyMin)}. Erst dann ist es nachgewiesen.`,
};

export const needsDe: Sentences<typeof needCodes> = {
  needSureCable: () => 'ein Kabel, das sicher gut ist: zertifiziert, lang genug, nicht länger als nötig',
  needTapeOrCover: () => 'Klebeband oder eine Kabelbrücke',
  needCouplerOrLongerCable: () =>
    'eine Kupplung, die die volle Rate durchlässt, oder ein längeres Kabel, das sicher gut ist',
  needSyncSwitch: () => 'ein Umschalter, der den Takt erneuert und die volle Rate durchlässt',
  needShortCable: () => 'ein kurzes Kabel, das sicher gut ist',
  needItsPowerSupply: () => 'sein Netzteil',
  needShortPassiveCable: () => 'ein passives Kabel von höchstens etwa 4 m, das sicher gut ist',
  needLongInputCable: () => 'ein langes Kabel für den Eingang des Prozessors',
  needMainsNearDisplay: () => 'Netzstrom nahe der Anzeige',
  needLikeDisplay: () => 'eine andere Anzeige, die denselben Kopierschutz kann und dasselbe Signal nimmt',
  needEarlierSettings: () => 'die früheren Einstellungen, aufgeschrieben oder gesichert',
  needFirmwareFile: () => 'die Firmware-Datei und die Anleitung des Herstellers',
  needTimeForUpdate: () => 'Zeit: Ein abgebrochenes Update kann das Gerät unbrauchbar machen',
  needCableAsLong: ({ lengthM }, say) => `etwa ${say.metres(lengthM)}, so lang wie das, das da ist`,
  needContentProtection: ({ version }) => `Kopierschutz ${version} an der anderen Anzeige`,
};
