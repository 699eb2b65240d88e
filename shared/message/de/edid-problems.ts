import type { edidProblemCodes } from '../codes/edid-problems.ts';
import type { Sentences } from '../sentences.ts';

type Lengths = { bytes: number; least: number };
const tooShort =
  (what: string) =>
  ({ bytes, least }: Lengths): string =>
    `Ein Block für ${what} mit ${bytes} Bytes; dorthin gehören ${least}.`;

export const edidProblemsDe: Sentences<typeof edidProblemCodes> = {
  'edid/noBytes': () => 'Es gibt keine Bytes zu lesen.',
  'edid/emptyMemory': ({ byte }) =>
    `Jedes Byte ist ${byte}h: Speicher, der nie beschrieben wurde, oder ein Bus, auf dem niemand antwortet.`,
  'edid/tooFewBytes': ({ bytes }, say) =>
    `${bytes} ${say.plural(bytes, 'Byte ist', 'Bytes sind')} zu wenig für ein EDID.`,
  'edid/onlyFirstBlocksRead': ({ blocks }) => `Nur die ersten ${blocks} Blöcke werden gelesen.`,
  'edid/blockCutOff': ({ bytes, of }) => `Der Block ist nach ${bytes} von ${of} Bytes abgeschnitten.`,
  'edid/checksumWrong': ({ written, right }) => `Die Prüfsumme ist ${written}h und müsste ${right}h sein.`,
  'edid/extensionUnread': ({ tag }) => `Ein Erweiterungsblock der Art ${tag}h, ungelesen behalten.`,
  'edid/overrideWantsOne': ({ declared }, say) =>
    `${declared} ${say.plural(declared, 'Erweiterungsblock ist', 'Erweiterungsblöcke sind')} angegeben, wo der Block für die Zahl der Erweiterungen 1 verlangt.`,
  'edid/extensionsMiscounted': ({ declared, present }) =>
    `Erweiterungsblöcke: ${declared} in Byte 126 angegeben, ${present} da.`,
  'edid/extensionsMiscountedByOverride': ({ declared, present }) =>
    `Erweiterungsblöcke: ${declared} im Block für die Zahl der Erweiterungen angegeben, ${present} da.`,
  'edid/headerDamaged': () => 'Der Kopf 00 FF FF FF FF FF FF 00 ist beschädigt.',
  'edid/versionUnknown': ({ version }) =>
    `EDID-Version ${version} ist nicht 1.x; gelesen wie 1.4, soweit es geht.`,
  'edid/versionNewer': ({ version }) => `EDID ${version} ist neuer als 1.4; gelesen wie 1.4.`,
  'edid/timingTooSlow': () => 'Ein ausführliches Timing unter 10 MHz Pixeltakt: als Füllung genommen.',
  'edid/syncOverrunsBlanking': () =>
    'Vordere Schwarzschulter und Sync eines ausführlichen Timings sind länger als seine Austastung; seine Rate ist die der Austastung.',
  'edid/repeatedWhole': ({ copies }) =>
    `Das ganze EDID steht ${copies}-mal da, wie im Abzug eines größeren Speichers; einmal gelesen.`,

  'edid/ctaRevisionZero': () => 'Revision 0 von CTA-861 gibt es nicht; der Block wird nicht gelesen.',
  'edid/timingsInsideHead': ({ byte }) => `Timings würden bei Byte ${byte} beginnen, im Kopf des Blocks.`,
  'edid/timingsOutsideBlock': ({ byte }) => `Timings würden bei Byte ${byte} beginnen, außerhalb des Blocks.`,
  'edid/blockHoldsNothing': () =>
    'Der Block sagt, dass er weder Datenblöcke noch Timings enthält; seine Merker werden nicht gelesen.',
  'edid/dataBlockOverruns': ({ bytes }) =>
    `Ein Datenblock von ${bytes} Bytes reicht über das Ende seiner Sammlung hinaus.`,
  'edid/dataBlockReserved': () => 'Ein Datenblock mit der reservierten Kennung 0.',
  'edid/extendedTagMissing': () => 'Ein Datenblock mit erweiterter Kennung, aber ohne Platz dafür.',
  'edid/vendorBlockTooShort': () => 'Ein Herstellerblock, der für seine OUI zu kurz ist.',
  'edid/videoCapabilityTooShort': tooShort('Bildfähigkeiten'),
  'edid/colorimetryTooShort': tooShort('Farbräume'),
  'edid/roomConfigurationTooShort': tooShort('die Aufstellung im Raum'),
  'edid/extensionOverrideTooShort': tooShort('die Zahl der Erweiterungen'),
  'edid/forumCapabilityTooShort': tooShort('Fähigkeiten der Senke nach HDMI Forum'),
  'edid/speakerAllocationTooShort': tooShort('die Lautsprecherbelegung'),
  'edid/hdrStaticTooShort': () =>
    'Ein Block mit statischen HDR-Metadaten, der für seine Übertragungsfunktionen zu kurz ist.',
  'edid/hdrDynamicOverruns': () =>
    'Eine Art dynamischer HDR-Metadaten reicht über das Ende ihres Blocks hinaus.',
  'edid/hdmiFormatsOverrun': () =>
    'HDMI-Formate oder 3D-Strukturen reichen über das Ende ihres Blocks hinaus.',
  'edid/hdmiBlockTooShort': () => 'Ein HDMI-Block, der für seine physische Adresse zu kurz ist.',
  'edid/audioNotWhole': ({ bytes }) => `Ein Tonblock von ${bytes} Bytes enthält keine ganzen Dreiergruppen.`,
  'edid/frlRateUnknown': ({ code }) =>
    `Code ${code} der höchsten festen Rate gehört zu einem späteren Standard: gezählt als 48 Gbit/s, die es mindestens sind.`,
  'edid/forumBlockTooShort': () =>
    'Ein Block des HDMI Forum, der für seine Version, Rate und Merker zu kurz ist.',

  'edid/displayIdTimingNotWhole': ({ bytes, type }) =>
    `${bytes} Bytes am Ende eines Timing-Blocks der Art ${type} sind kein ganzes Timing.`,
  'edid/displayIdBlockOverruns': () => 'Ein DisplayID-Block reicht über das Ende seines Abschnitts hinaus.',
  'edid/displayIdSectionTooLong': () => 'Der DisplayID-Abschnitt nennt mehr Bytes, als sein Block enthält.',
  'edid/displayIdChecksumWrong': () => 'Die Prüfsumme des DisplayID-Abschnitts ist falsch.',

  'edid/bytesBeforeHeader': ({ bytes }, say) =>
    `${bytes} ${say.plural(bytes, 'Byte vor dem Kopf ist', 'Bytes vor dem Kopf sind')} übersprungen.`,
  'edid/lowByteFirst': () => 'Der Auszug hat das niedrige Byte jedes Worts zuerst.',
  'edid/moreBytesFollow': () => 'Im Text folgen weitere Bytes; nur das erste EDID wird gelesen.',
  'edid/fileUnreadable': ({ reason }, say) => `Die Datei lässt sich nicht lesen: ${say.text(reason)}.`,
};
