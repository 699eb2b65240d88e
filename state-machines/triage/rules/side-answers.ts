import { findDevice } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type {
  Side,
  SideObservation,
  SideProof,
  TriageRecord,
  Watch,
} from '../../../shared/contract/triage.ts';
import { liesOverPicture } from '../../../shared/isolation/index.ts';
import { message } from '../../../shared/message/message.ts';
import { meetingPoint, menuQualitiesAt, readingsAsFound } from '../looks.ts';
import { occurrencesIn, occurrencesOf, standingLooks, watchesFor } from '../record.ts';
import { traceOf, traceSideAt } from '../trace.ts';
import { because, type Cause } from './refusal.ts';

export type Answer = Pick<SideObservation, 'deviceId' | 'side' | 'proof'>;
type Outcome = { answer: Answer } | { cause: Cause };

/** What is there to say of the side at a device, by one kind of proof; or why it says nothing. */
export function answerAt(
  record: TriageRecord,
  chain: Chain,
  { deviceId, from }: { deviceId: string; from: SideProof['kind'] },
): Outcome {
  switch (from) {
    case 'menu':
      return menuAnswerAt(record, chain, deviceId);
    case 'trace':
      return traceAnswerAt(record, chain, deviceId);
    case 'witness':
      return witnessAnswerAt(record, chain, deviceId);
  }
}

const sideWatches = (record: TriageRecord, deviceId: string): Watch[] =>
  watchesFor(record, 'side').filter((watch) => watch.menuDeviceId === deviceId && watch.endedAt !== null);

/** What the watches at one device say: all occurrences agree on the side, or there is a reason why there is none. */
function menuAnswerAt(record: TriageRecord, chain: Chain, deviceId: string): Outcome {
  const watches = sideWatches(record, deviceId).filter((watch) => occurrencesOf(watch).length > 0);
  const answers = occurrencesIn(watches).map(({ menu }) => menu);
  const stayed = answers.filter((menu) => menu === 'stayed').length;
  const vanished = answers.length - stayed;
  const place = { kind: 'device', deviceId } as const;
  if (answers.length === 0) {
    const said = message('faultNotSeenWithMenu', { device: namedPlace(chain, place) });
    return { cause: because('no-occurrence', said, { place }) };
  }
  if (stayed > 0 && vanished > 0) {
    const said = message('menuContradicts', { device: namedPlace(chain, place), stayed, vanished });
    return { cause: because('side-contradiction', said, { place }) };
  }
  const side: Side = stayed > 0 ? 'input' : 'output';
  const watchIds = watches.map(({ id }) => id);
  return { answer: { deviceId, side, proof: { kind: 'menu', watchIds, occurrences: answers.length } } };
}

/**
 * Refuses “downstream” where it rests on a menu that vanished and it is not known what this menu does by itself: many
 * fall with their input, and some come in another format. One that stayed has shown what it does.
 */
export function refuseUnknownMenu(record: TriageRecord, chain: Chain, answer: Answer): Cause | null {
  if (answer.proof.kind !== 'menu' || answer.side === 'input' || liesOverPicture(record.symptom)) return null;
  const { survivesLossOfInput, keepsFormat } = menuQualitiesAt(record, chain, answer.deviceId);
  if (survivesLossOfInput === 'yes' && keepsFormat !== 'unknown') return null;
  const place = { kind: 'device', deviceId: answer.deviceId } as const;
  const device = namedPlace(chain, place);
  const said =
    survivesLossOfInput === 'no'
      ? message('menuFallsWithInput', { device })
      : message('menuQualitiesNotKnown', { device });
  return because('side-unknown', said, { place });
}

function traceAnswerAt(record: TriageRecord, chain: Chain, deviceId: string): Outcome {
  const place = { kind: 'device', deviceId } as const;
  const trace = traceOf({ chain, symptom: record.symptom }, readingsAsFound(record));
  const found = trace === null ? null : traceSideAt(trace, deviceId);
  if (found === null) {
    const said = message('traceSaysNothing', { device: namedPlace(chain, place) });
    return { cause: because('side-unknown', said, { place }) };
  }
  const { side, lookIds, sendsWrong } = found;
  return { answer: { deviceId, side, proof: { kind: 'trace', lookIds, sendsWrong } } };
}

/**
 * Where a witness's way leaves the one to a display, or joins it: if the witness shows the fault, it lies in what both
 * have in common; if not, in the rest.
 */
function witnessAnswerAt(record: TriageRecord, chain: Chain, deviceId: string): Outcome {
  const place = { kind: 'device', deviceId } as const;
  const answers = standingLooks(record, 'witness')
    .filter(({ what }) => what.answer !== 'cannotSay' && meetingPoint(chain, what) === deviceId)
    .map(({ id, what }) => ({
      lookId: id,
      side: sideByWitness(chain, what.deviceId, what.answer === 'shows'),
    }));
  const [first, ...others] = answers;
  if (first === undefined) {
    const said = message('noWitnessAt', { device: namedPlace(chain, place) });
    return { cause: because('side-unknown', said, { place }) };
  }
  if (others.some(({ side }) => side !== first.side)) {
    const said = message('witnessesContradict', { device: namedPlace(chain, place) });
    return { cause: because('side-contradiction', said, { place }) };
  }
  const lookIds = answers.map(({ lookId }) => lookId);
  return { answer: { deviceId, side: first.side, proof: { kind: 'witness', lookIds } } };
}

/** A display shares what lies upstream of the fork, a source what lies downstream of the device where it joins. */
function sideByWitness(chain: Chain, witnessId: string, shows: boolean): Side {
  const isDisplay = findDevice(chain, witnessId)?.role === 'display';
  return isDisplay === shows ? 'input' : 'output';
}
