import type { powerCodes } from '../codes/power.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

const aCable: Record<Kinds['construction'], string> = {
  passiveCopper: 'ein passives Kupferkabel',
  activeCopper: 'ein aktives Kupferkabel',
  activeOptical: 'ein aktives optisches Kabel',
  twistedPairExtender: 'eine Verlängerung über verdrillte Paare',
};

export const powerDe: Sentences<typeof powerCodes> = {
  linkUnderfed: ({ cable, budget }, say) =>
    `Bei ${say.place(cable, 'dative')} ist die 5-V-Leitung zu schwach. ${say.message(budget)}`,
  fiveVoltBudget: ({ supply, sink, cable, balance }, say) =>
    `${say.message(supply)}, ${say.message(sink)}, ${say.message(cable)}: ${say.message(balance)}.`,
  fiveVoltOpticalOnSource: ({ budget, offered }, say) =>
    `${say.message(budget)} Es zeigt sich beim Start: kein Bild, oder eines, das aussetzt. Versorg das Kabel an einem Ende, das Strom nimmt, oder nimm passives Kupfer von der Quelle zum nächsten Gerät; eine Quelle, die Strom für Kabel anbietet, liefert ${say.number(offered)} mA.`,
  fiveVoltFallsShort: ({ budget, cable }, say) =>
    `${say.message(budget)} Versorg ${say.place(cable, 'accusative')} an einem Ende, das Strom nimmt, oder miss, was die Quelle liefert.`,
  suppliesAtLeast: ({ source, supply }, say) =>
    `${say.device(source)} muss ${say.number(supply)} mA bei 5 V liefern und nicht mehr`,
  supplies: ({ source, supply }, say) => `${say.device(source)} liefert ${say.number(supply)} mA bei 5 V`,
  mayTake: ({ sink, draw }, say) => `${say.device(sink)} darf bis zu ${say.number(draw)} nehmen`,
  takes: ({ sink, draw }, say) => `${say.device(sink)} nimmt ${say.number(draw)}`,
  cableTakes: ({ draw }, say) => `das Kabel nimmt ${say.number(draw)}`,
  cableTakesAbout: ({ construction, draw }, say) =>
    `${aCable[construction]} nimmt etwa ${say.number(draw)} (angenommen)`,
  cableHasOwnSupply: () => 'das Kabel hat ein eigenes Netzteil',
  cableTakesNothing: () => 'das Kabel nimmt nichts',
  currentToSpare: ({ left }, say) => `${say.number(left)} mA übrig`,
  currentShort: ({ short }, say) => `es fehlen ${say.number(short)} mA`,
  powerCable: () =>
    'Versorg das Kabel an dem Ende, das der Hersteller nennt, oder setz einen Umschalter mit eigenem Netzteil davor.',
};
