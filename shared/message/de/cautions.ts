import type { cautionCodes } from '../codes/cautions.ts';
import type { Sentences } from '../sentences.ts';

export const cautionsDe: Sentences<typeof cautionCodes> = {
  cautionOpticalLight: () =>
    'Das Licht in einem optischen Kabel ist unsichtbar und kann dem Auge schaden: Sieh nie in sein Ende oder in die Buchse, in der es steckte.',
  cautionDisplay: () =>
    'Eine Anzeige kann hoch hängen, und ein Projektor wirft starkes Licht: Nimm eine gesicherte Leiter und eine zweite Person, bleib aus dem Strahl und sieh nie in das Objektiv.',
  cautionMains: () =>
    'In Racks ist Netzspannung: Lass Abdeckungen zu und überlass feste Leitungen einer Elektrofachkraft.',
  cautionCableInWall: () =>
    'Kabel in Wänden brauchen die Brandklasse, die örtliche Vorschriften verlangen; Arbeit in Wänden ist Sache zugelassener Betriebe.',
  cautionCableAcrossFloor: () =>
    'Über ein Kabel am Boden stolpert man: Deck es ab oder kleb es fest, und nimm es nach dem Test auf.',
  cautionFirmwareUpdate: () =>
    'Ein Update lässt sich nicht rückgängig machen, und ein Gerät, dem mittendrin der Strom ausfällt, startet vielleicht nicht mehr.',
};
