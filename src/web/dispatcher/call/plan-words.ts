import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { PhonePlanReply, PlannedTestView } from '../../../../shared/contract/plan.ts';
import { language } from '../../words/language.ts';
import { type Said, said } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';

/** A place of the chain as a German sentence names it. */
function germanPlace(chain: Chain, place: Place): string {
  const device = (id: string): string => chain.devices.find((one) => one.id === id)?.name ?? id;
  if (place.kind === 'chain') return `die Kette „${chain.name}“`;
  if (place.kind === 'device') {
    const role = chain.devices.find(({ id }) => id === place.deviceId)?.role;
    return `${role === undefined ? 'Gerät' : terms().devices[role]} „${device(place.deviceId)}“`;
  }
  if (place.kind === 'port') return `Anschluss ${place.portId} an „${device(place.deviceId)}“`;
  const link = chain.links.find(({ id }) => id === place.linkId);
  return link === undefined
    ? place.linkId
    : `das Kabel von „${device(link.from.deviceId)}“ zu „${device(link.to.deviceId)}“`;
}

const tests: Record<string, (place: string) => string> = {
  menu: (place) => `Menü einblenden an: ${place}. Beobachten, ob es bleibt, wenn der Fehler kommt`,
  reseat: (place) => `Beide Stecker ziehen und fest wieder stecken: ${place}`,
  otherSource: (place) => `Von einer anderen Quelle spielen, statt: ${place}`,
  disableProcessing: (place) => `Bildverarbeitung ausschalten: ${place}`,
  limitInputBandwidth: (place) => `Eingang auf 9 Gbit/s begrenzen: ${place}`,
  limitOutputBandwidth: (place) => `Ausgang auf 9 Gbit/s begrenzen: ${place}`,
  reissueHotPlug: (place) => `Neu anmelden lassen (aus- und einschalten): ${place}`,
  unplugBranch: (place) => `Den anderen Zweig abstecken: ${place}`,
  movePort: (place) => `Einen anderen Anschluss nehmen: ${place}`,
  raisePortMode: (place) => `Anschluss auf den höheren Modus stellen: ${place}`,
  restoreSettings: (place) => `Einstellungen zurücksetzen: ${place}`,
  updateFirmware: (place) => `Firmware erneuern: ${place}`,
};
export function testSaid(test: Pick<PlannedTestView, 'kind' | 'target' | 'text'>, chain: Chain | null): Said {
  const words = tests[test.kind];
  if (language.value === 'en' || words === undefined || chain === null) return said(test.text);
  return { text: words(germanPlace(chain, test.target)) };
}

const answers: Record<string, string> = {
  'The menu stays': 'Das Menü bleibt',
  'The menu vanishes': 'Das Menü verschwindet',
  'It stays away': 'Es bleibt aus',
  'It comes': 'Es kommt',
};
export const answerSaid = (answer: string): Said => {
  const german = answers[answer];
  return language.value === 'en' || german === undefined ? said(answer) : { text: german };
};

/** A suspect by its place, where it has one. */
export const suspectSaid = (
  { name, place }: Pick<PhonePlanReply['suspects'][number], 'name' | 'place'>,
  chain: Chain | null,
): Said =>
  language.value === 'en' || place === null || chain === null
    ? said(name)
    : { text: germanPlace(chain, place) };

/** A suspect that an outcome points at, which the plan names in an English phrase. */
export const outcomeSaid = (name: string, suspects: PhonePlanReply['suspects'], chain: Chain | null): Said =>
  suspectSaid(suspects.find((suspect) => suspect.name === name) ?? { name, place: null }, chain);
