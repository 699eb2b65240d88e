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
};
