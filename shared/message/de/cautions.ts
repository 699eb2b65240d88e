import type { cautionCodes } from '../codes/cautions.ts';
import type { Sentences } from '../sentences.ts';

export const cautionsDe: Sentences<typeof cautionCodes> = {
  cautionOpticalLight: () =>
    'Ein aktives optisches Kabel führt Laserlicht, das unsichtbar ist und dem Auge schaden kann: Sieh nie in sein Ende oder in die Buchse, in der es steckte, öffne keinen Stecker, knick es nicht.',
  cautionDisplay: () =>
    'Eine Anzeige kann hoch hängen, und ein Projektor wirft starkes Licht: Nimm eine Leiter, die sicher steht, lass sie halten, und beug dich nie zur Seite; bleib aus dem Strahl, sieh nie in das Objektiv, und lass ihn abkühlen, bevor du daran arbeitest.',
  cautionMains: () =>
    'In Racks und Geräten ist Netzspannung: Schalte aus und zieh den Netzstecker, bevor du dahinter greifst, öffne kein Gehäuse; an Netzleitungen arbeitet nur eine Elektrofachkraft.',
  cautionCableInWall: () =>
    'Kabel in Wänden brauchen die Brandklasse, die örtliche Vorschriften verlangen; Wände und Brandschotts öffnen nur zugelassene Betriebe.',
  cautionCableAcrossFloor: () =>
    'Über ein Kabel am Boden stolpert man: Leg es nicht durch Türen, kleb es fest oder deck es ab, sag es allen im Raum, und nimm es mit, wenn du gehst.',
  cautionConduit: () =>
    'Sieh nach, was sonst im Rohr liegt, und zieh nie neben Netzleitungen ein; die Brandklasse des Kabels muss den örtlichen Vorschriften genügen.',
  cautionLifting: () => 'Anzeigen und Prozessoren sind schwer und kippen: zu zweit heben.',
  cautionFirmwareUpdate: () =>
    'Ein Update lässt sich nicht rückgängig machen, und ein Gerät, dem mittendrin der Strom ausfällt, startet vielleicht nicht mehr: Schalte nicht aus, und schreib vorher alle Einstellungen auf, denn ein Update kann sie zurücksetzen.',
  cautionFlexByHand: () =>
    'Bieg es nur von Hand, auf dem Boden stehend, wo das Kabel frei liegt: nie von der Leiter, nie ein optisches Kabel, und ohne Kraft auf Stecker oder Buchse.',
  cautionMainsOrder: () =>
    'Eine Minute aus, jedes Gerät an seinem Schalter oder Stecker, nie am Sicherungskasten. Nicht, während etwas ein Update lädt oder aufnimmt oder ein Medienserver schreibt. Lass einen Projektor vorher abkühlen. Alarmanlage, Netzwerk und medizinische Geräte bleiben am Strom.',
  cautionPowerOff: () =>
    'Am eigenen Schalter oder Stecker, nie am Sicherungskasten, und nicht, während es ein Update lädt, aufnimmt oder schreibt. Lass einen Projektor vorher abkühlen. Alarmanlage, Netzwerk und medizinische Geräte bleiben am Strom.',
  cautionSupply: () =>
    'Nimm nur ein Netzteil, das der Hersteller zulässt: gleiche Spannung, gleiche Polung, gleicher Stecker, mindestens der gleiche Strom. Öffne kein Gehäuse.',
  cautionHeat: () =>
    'Erwärme es nur, indem du es wie üblich benutzt: keine Lüftung abdecken, keine Heißluft. Flächen können heiß sein; was riecht oder sich verfärbt, bleibt aus.',
  cautionEarth: () =>
    'Der Schutzleiter wird nie abgehängt, abgeklebt oder mit einem Adapter umgangen, auch nicht zum Test. Kribbelt es oder springt ein Funke: aufhören, nichts mehr anfassen, eine Elektrofachkraft rufen.',
  cautionThunderstorm: () =>
    'Nicht bei Gewitter, und die Erdung einer Antenne oder Schüssel bleibt, wie sie ist: Sie gehört der Elektrofachkraft.',
  cautionOthersAppliances: () =>
    'Frag, bevor etwas ausgeschaltet oder abgezogen wird: nichts Medizinisches, keine Alarmanlage, keine Heizung, kein Kühlgerät, nichts, woran jemand arbeitet.',
  cautionReturnAudio: () =>
    'Ton, der über dasselbe Kabel zurückkommt, kann mit dem Steuerbus wegfallen: Sag es, und prüf danach den Ton.',
  cautionBeam: () => 'Ein Projektor, der aufwacht, wirft starkes Licht: Niemand sieht in das Objektiv.',
};
