import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { Side, SideObservation, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import type { Outcomes } from '../events.ts';
import { occurrencesIn, occurrencesOf, signed, standingSides, watchesFor } from '../record.ts';
import { isEmpty, segmentFor, whyNoMenuDevice } from '../segment.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, noWatchRuns, rule } from './rule.ts';

type Answer = Pick<SideObservation, 'deviceId' | 'side' | 'watchIds' | 'occurrences'>;
type Outcome = { answer: Answer } | { cause: Cause };

const sideWatches = (record: TriageRecord, deviceId: string): Watch[] =>
  watchesFor(record, 'side').filter((watch) => watch.menuDeviceId === deviceId && watch.endedAt !== null);

/** What the watches at one device say: all occurrences agree on the side, or there is a reason why there is none. */
function answerAt(record: TriageRecord, chain: Chain, deviceId: string): Outcome {
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
  return {
    answer: { deviceId, side, watchIds: watches.map(({ id }) => id), occurrences: answers.length },
  };
}

/** Refuses an answer that, with those at other devices, would leave nothing that could be at fault. */
function refuseContradiction(record: TriageRecord, chain: Chain, answer: Answer): Cause | null {
  const others = standingSides(record).filter(({ deviceId }) => deviceId !== answer.deviceId);
  if (!isEmpty(segmentFor(chain, [...others, answer]))) return null;
  const against = others.filter((other) => isEmpty(segmentFor(chain, [other, answer])));
  const at = ({ side, deviceId }: Pick<SideObservation, 'side' | 'deviceId'>) => ({
    side,
    device: namedPlace(chain, { kind: 'device', deviceId }),
  });
  const contradicted = (against.length > 0 ? against : others).map((other) => message('sideOf', at(other)));
  const said = message('sidesContradict', { ...at(answer), others: contradicted });
  return because('side-contradiction', said, { place: { kind: 'device', deviceId: answer.deviceId } });
}

/** What the watches at a device say now of the side, beside what stands at others; null where they say nothing. */
export function sideNow(record: TriageRecord, deviceId: string): Outcomes['concludeSide'] | null {
  const chain = record.asFound?.chain;
  const found = chain === undefined ? null : answerAt(record, chain, deviceId);
  if (chain === undefined || found === null || 'cause' in found) return null;
  if (refuseContradiction(record, chain, found.answer) !== null) return null;
  const { side, watchIds, occurrences } = found.answer;
  return { side, watchIds, occurrences };
}

/** Every side that stands must still be what its watches say. */
export function sidesHold(record: TriageRecord): Cause | null {
  const chain = record.asFound?.chain;
  const sides = standingSides(record);
  if (chain === undefined || sides.length === 0) {
    return because('side-unknown', message('noSideYet'));
  }
  for (const side of sides) {
    const outcome = answerAt(record, chain, side.deviceId);
    if ('cause' in outcome) return outcome.cause;
  }
  return null;
}

export const concludeSide = rule('concludeSide', {
  ready: firstOf(noWatchRuns, (record) =>
    occurrencesIn(watchesFor(record, 'side')).length > 0
      ? null
      : because('no-occurrence', message('faultNotSeenWithAnyMenu')),
  ),
  refuse: (record, event) => {
    const chain = record.asFound?.chain;
    if (chain === undefined) return because('not-allowed-now', message('recordAsFoundFirst'));
    if (standingSides(record).some(({ deviceId }) => deviceId === event.deviceId)) {
      return because('not-allowed-now', message('sideConcludedAlready'));
    }
    const why = whyNoMenuDevice(chain, event.deviceId);
    const place = { kind: 'device', deviceId: event.deviceId } as const;
    if (why !== null) return because('device-not-suitable', why, { place });
    const outcome = answerAt(record, chain, event.deviceId);
    return 'cause' in outcome ? outcome.cause : refuseContradiction(record, chain, outcome.answer);
  },
  outcome: (record, { deviceId }) => {
    const found = sideNow(record, deviceId);
    if (found === null) throw new Error('no side can be concluded');
    return found;
  },
  apply: (record, event) => {
    const { deviceId, outcome } = event;
    const today = { round: record.round, ...signed(event), withdrawn: null, superseded: null };
    const side = { deviceId, ...outcome, ...today };
    return { ...record, sides: [...record.sides, side] };
  },
});

export const withdrawSide = rule('withdrawSide', {
  ready: firstOf(noWatchRuns, (record) =>
    standingSides(record).length > 0 ? null : because('side-unknown', message('noSideConcluded')),
  ),
  refuse: (record, event) =>
    standingSides(record).some(({ deviceId }) => deviceId === event.deviceId)
      ? null
      : because('unknown-reference', message('noSideAtDevice')),
  apply: (record, event) => {
    const withdrawn = { ...signed(event), reason: event.reason };
    const standing = standingSides(record).find(({ deviceId }) => deviceId === event.deviceId);
    return {
      ...record,
      sides: record.sides.map((side) => (side === standing ? { ...side, withdrawn } : side)),
    };
  },
});

export const beginSubstitution = rule('beginSubstitution', {
  ready: firstOf(noWatchRuns, sidesHold),
  apply: (record) => record,
});

export const locateSideAgain = rule('locateSideAgain', {
  ready: noWatchRuns,
  apply: (record, event) => ({
    ...record,
    notes: [...record.notes, { text: event.reason, ...signed(event) }],
  }),
});
