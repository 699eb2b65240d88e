import type { linkBudgetCodes } from '../codes/link-budget.ts';
import { encodingNames } from '../figures.ts';
import type { Sentences } from '../sentences.ts';

export const linkBudgetDe: Sentences<typeof linkBudgetCodes> = {
  noWayToSend: ({ format }, say) => `Es gibt keinen Weg, ${say.format(format)} zu senden.`,
  linkBudget: ({ need, limit, headroom }, say) =>
    `${say.message(need)}, ${say.message(limit)}: ${say.message(headroom)}.`,
  linkNeeds: ({ need }, say) => `Diese Verbindung braucht ${say.gbps(need)}`,
  linkNeedsFixedRate: ({ need }, say) => `Diese Verbindung braucht ${say.gbps(need)} mit fester Rate`,
  cableIsGoodFor: ({ rate }, say) => `das Kabel taugt für ${say.number(rate)}`,
  extenderIsGoodFor: ({ rate }, say) => `das Paar Verlängerungen taugt für ${say.number(rate)}`,
  edidAdmits: ({ port, rate }, say) => `das EDID, das ${say.socket(port)} sieht, erlaubt ${say.number(rate)}`,
  portIsSetToPass: ({ port, rate }, say) =>
    `${say.socket(port)} ist auf höchstens ${say.number(rate)} eingestellt`,
  portPasses: ({ port, rate }, say) => `${say.socket(port)} lässt ${say.number(rate)} durch`,
  byTmdsOnly: ({ limit }, say) => `${say.message(limit)}, nur über TMDS`,
  rateShort: ({ share }, say) => `es fehlen ${say.percent(share)}`,
  rateExceeded: ({ share }, say) => `${say.percent(share)} mehr sind nötig`,
  nothingCarried: () => 'nichts, womit zu rechnen wäre',
  nothingToSpare: () => 'nichts übrig',
  rateToSpare: ({ share }, say) => `${say.percent(share)} übrig`,
  linkNotOffered: ({ need, port, reasons }, say) =>
    `${say.message(need)}, aber das EDID, das ${say.socket(port)} sieht, ${say.and(reasons.map(say.message))}.`,
  edidLacksSizeIn420: () => 'bietet diese Größe und Rate nicht in 4:2:0 an',
  edidOffersSizeIn420Only: () => 'bietet diese Größe und Rate nur in 4:2:0 an',
  edidLacksSize: () => 'bietet diese Größe und Rate nicht an',
  edidLacksEncoding: ({ encoding }) => `bietet ${encodingNames[encoding]} nicht an`,
  edidLacksDepth: ({ bits, encoding }) => `bietet ${bits} Bit in ${encodingNames[encoding]} nicht an`,
  onlyCompressed: ({ need, limit, bitsPerPixel }, say) =>
    `${say.message(need)}. ${say.start(say.message(limit))}: Es geht nur komprimiert, auf ${say.number(bitsPerPixel, 4)} Bit je Pixel, wenn die Quelle das kann.`,
  cableCountedForLess: ({ need, rated, reasons, counted, headroom }, say) =>
    counted === 0
      ? `${say.message(need)}. Das Kabel taugt vielleicht für ${say.number(rated)}, aber ${say.and(reasons.map(say.message))}: Rechne nicht damit (angenommen).`
      : `${say.message(need)}. Das Kabel taugt vielleicht für ${say.number(rated)}, aber ${say.and(reasons.map(say.message))}: Rechne mit ${say.number(counted)} (angenommen), ${say.message(headroom)}.`,
  doubtExtender: () => 'bei Verlängerungen zählt, was die meisten durchlassen',
  doubtCategory: () => 'die Kategorie ist nicht bekannt',
  doubtCertification: () => 'niemand hat das Zertifizierungsetikett gesehen',
  doubtSiteFittedEnds: () => 'die Enden wurden vor Ort montiert',
  doubtLength: ({ length, counted }, say) =>
    `es ist ${say.metres(length)} lang, wo ${say.metres(counted)} voll zählen`,
  doubtCouplers: () => 'es ist aus Stücken gekuppelt',
  cablePassesLess: ({ need, reasons, rate, headroom }, say) =>
    rate === 0
      ? `${say.message(need)}. Das Kabel lässt nichts durch, denn ${say.and(reasons.map(say.message))}.`
      : `${say.message(need)}. Das Kabel taugt höchstens für ${say.number(rate)}, denn ${say.and(reasons.map(say.message))}: ${say.message(headroom)}.`,
  extenderCountedForLess: ({ need, rated, reasons, counted, headroom }, say) =>
    `${say.message(need)}. Das Paar Verlängerungen taugt vielleicht für ${say.number(rated)}, aber ${say.and(reasons.map(say.message))}: Rechne mit ${say.number(counted)} (angenommen), ${say.message(headroom)}.`,
  extenderPassesLess: ({ need, reasons, rate, headroom }, say) =>
    rate === 0
      ? `${say.message(need)}. Das Paar Verlängerungen lässt nichts durch, denn ${say.and(reasons.map(say.message))}.`
      : `${say.message(need)}. Das Paar Verlängerungen taugt höchstens für ${say.number(rate)}, denn ${say.and(reasons.map(say.message))}: ${say.message(headroom)}.`,
  doubtReversed: () => 'es liegt verkehrt herum',
  doubtWithoutPower: () => 'ein Ende, das Strom braucht, hat keinen',

  lossOfFormat: ({ format }, say) => say.format(format),
  lossOfHdr: ({ kind }) => kind,
  lossOfWideColour: () => 'Farben nach BT.2020',
  lossOfVariableRate: () => 'variable Bildrate',
  lossOfLowLatency: () => 'automatische kurze Latenz',
  lossOfQuickSwitching: () => 'schnellen Wechsel der Bildrate',
  lossOfThreeD: () => '3D',
  lossOfDepth: ({ bits }) => `${bits} Bit`,
  lostAtDevice: ({ device, what }, say) =>
    `${say.place(device)} unterstützt ${say.or(what.map(say.message))} nicht`,
  lostByEdid: ({ device, what }, say) =>
    `das EDID von ${say.place(device, 'dative')} erlaubt ${say.or(what.map(say.message))} nicht`,
  lostByLimitedEdid: ({ device, what }, say) =>
    `${say.place(device)} nimmt ${say.and(what.map(say.message))} aus dem EDID`,
  lostByReplacedEdid: ({ device, what }, say) =>
    `${say.place(device)} zeigt ein eigenes EDID ohne ${say.and(what.map(say.message))}`,
  lostByCommonEdid: ({ device, what }, say) =>
    `nicht alle Anzeigen hinter ${say.place(device, 'dative')} nehmen ${say.and(what.map(say.message))}`,
  lostForWantOfBits: ({ device, what }, say) =>
    `${say.and(what.map(say.message))} aus ${say.place(device, 'dative')} zeigt mit 8 Bit Stufen`,
  lossOfSound: () => 'so viel Ton',
  lostForWantOfBlanking: ({ device, what }, say) =>
    `die Austastung des Bildes aus ${say.place(device, 'dative')} hat keinen Platz für ${say.and(what.map(say.message))}`,
  linkLoses: ({ need, losses }, say) =>
    `${say.message(need)}, und das hat sie, aber ${say.and(losses.map(say.message))}.`,

  returnAudioCarried: ({ link, kind }, say) =>
    `${say.start(say.place(link))} trägt neben dem Bild ${kind} zurück.`,
  returnAudioNotCarried: ({ link, kind }, say) =>
    `${say.start(say.place(link))} trägt kein ${kind}: Darüber kommt kein Ton zurück.`,
  returnAudioUnknown: ({ link, kind }, say) =>
    `${say.start(say.place(link))} trägt vielleicht kein ${kind}: Nicht jedes solche Kabel hat einen Weg dafür.`,
  useCableWithReturnAudio: () =>
    'Nimm ein Kabel, das den Ton zurückträgt, oder führ den Ton anders zum Receiver.',
  tryReturnAudio: () =>
    'Spiel etwas aus der eigenen Quelle der Anzeige und hör, ob Ton zurückkommt; schreib es beim Kabel auf.',

  noLinkToJudge: ({ format }, say) => `${say.format(format)}: Es gibt keine Verbindung zu beurteilen.`,
  formatFits: ({ format, tightest, onLink }, say) =>
    `${say.format(format)} passt auf jede Verbindung; am engsten ist ${say.place(tightest)}. ${say.message(onLink)}`,
  formatDoubtful: ({ format, link, onLink }, say) =>
    `Mit ${say.format(format)} ist über ${say.place(link, 'accusative')} nicht zu rechnen. ${say.message(onLink)}`,
  formatOnlyCompressed: ({ format, link, onLink }, say) =>
    `${say.format(format)} geht über ${say.place(link, 'accusative')} nur komprimiert. ${say.message(onLink)}`,
  formatReduced: ({ format, link, onLink }, say) =>
    `${say.format(format)} kommt über ${say.place(link, 'accusative')}, aber nicht vollständig. ${say.message(onLink)}`,
  formatNotOffered: ({ format, link, onLink }, say) =>
    `${say.format(format)} wird der Quelle an ${say.place(link, 'dative')} nicht angeboten. ${say.message(onLink)}`,
  formatTooMuch: ({ format, link, onLink }, say) =>
    `${say.format(format)} passt nicht durch ${say.place(link, 'accusative')}. ${say.message(onLink)}`,

  fitsWithoutDevice: ({ device, format, withIt }, say) =>
    `Ohne ${say.place(device, 'accusative')} passt ${say.format(format)} überall. Damit: ${say.message(withIt)}`,
  getsFurtherWithoutDevice: ({ device, format, withIt }, say) =>
    `Ohne ${say.place(device, 'accusative')} kommt ${say.format(format)} weiter. Damit: ${say.message(withIt)}`,
  worseWithoutDevice: ({ device, withoutIt }, say) =>
    `Ohne ${say.place(device, 'accusative')} ist es schlechter: ${say.message(withoutIt)}`,
  fitsWithAndWithoutDevice: ({ device, format }, say) =>
    `${say.format(format)} passt mit ${say.place(device, 'dative')} und auch ohne.`,
  sameWithoutDevice: ({ device, format, withoutIt }, say) =>
    `${say.start(say.place(device))} ändert nichts für ${say.format(format)}: ${say.message(withoutIt)}`,

  fitAnotherCable: () =>
    'Ersetz das Kabel durch eines, das für die Rate zertifiziert ist, oder verlang ein Format, das passt.',
  readEdidAtBothEnds: () =>
    'Lies das EDID an der Quelle und an der Anzeige und sieh, wer es unterwegs ändert.',
  setOutputMode: () =>
    'Stell den Ausgang auf die Betriebsart, die es durchlässt, nimm einen, der das kann, oder verlang ein Format, das passt.',
  setInputMode: () =>
    'Stell den Eingang auf die Betriebsart, die es durchlässt, nimm einen, der das kann, oder verlang ein Format, das passt.',
  useFasterPort: () =>
    'Keine Betriebsart der Buchse lässt es durch: Nimm eine Buchse, die das kann, oder verlang ein Format, das passt.',
  checkSourceCompresses: () => 'Sieh nach, ob die Quelle komprimiertes Video sendet, und schreib es auf.',
  askForLess: () =>
    'Verlang weniger Bits, eine gröbere Abtastung oder eine kleinere Rate: Keine Verbindung trägt dieses Format.',
  askForExistingFormat: () =>
    'Verlang ein Format, das es gibt: Mit dieser Abtastung und diesen Bits gibt es keines.',
};
