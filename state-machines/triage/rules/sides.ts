import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { SideObservation, SideProof, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import type { Outcomes } from '../events.ts';
import { readingsAsFound } from '../looks.ts';
import { isWithoutSide, occurrencesIn, signed, standingLooks, standingSides, watchesFor } from '../record.ts';
import { isEmpty, segmentFor, whyNoMenuDevice, whyNotOnTheWay } from '../segment.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, noWatchRuns, rule } from './rule.ts';
import { type Answer, answerAt, refuseUnknownMenu } from './side-answers.ts';

type Asked = { deviceId: string; from?: SideProof['kind'] | undefined };
const proofOf = ({ deviceId, from = 'menu' }: Asked) => ({ deviceId, from });

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

/** What a proof at a device says now of the side, beside what stands at others; null where it says nothing. */
export function sideNow(record: TriageRecord, asked: Asked): Outcomes['concludeSide'] | null {
  const chain = record.asFound?.chain;
  const found = chain === undefined ? null : answerAt(record, chain, proofOf(asked));
  if (chain === undefined || found === null || 'cause' in found) return null;
  if (refuseUnknownMenu(record, chain, found.answer) !== null) return null;
  if (refuseContradiction(record, chain, found.answer) !== null) return null;
  const { side, proof } = found.answer;
  return { side, proof };
}

/** Every side that stands must still be what it rests on says; or work goes on without one. */
export function sidesHold(record: TriageRecord): Cause | null {
  const chain = record.asFound?.chain;
  const sides = standingSides(record);
  if (chain === undefined || sides.length === 0) {
    return because('side-unknown', message('noSideYet'));
  }
  for (const { deviceId, proof } of sides) {
    const outcome = answerAt(record, chain, { deviceId, from: proof.kind });
    if ('cause' in outcome) return outcome.cause;
  }
  return null;
}

/** A side is known and holds, or it was said that none can be proven. */
export const sidesHoldOrGivenUp = (record: TriageRecord): Cause | null =>
  isWithoutSide(record) && standingSides(record).length === 0 ? null : sidesHold(record);

/** Nothing was seen yet that a side could be concluded from. */
const somethingSeen = (record: TriageRecord): Cause | null =>
  occurrencesIn(watchesFor(record, 'side')).length > 0 ||
  readingsAsFound(record).length > 0 ||
  standingLooks(record, 'witness').length > 0
    ? null
    : because('no-occurrence', message('faultNotSeenWithAnyMenu'));

export const concludeSide = rule('concludeSide', {
  ready: firstOf(noWatchRuns, somethingSeen),
  refuse: (record, event) => {
    const chain = record.asFound?.chain;
    if (chain === undefined) return because('not-allowed-now', message('recordAsFoundFirst'));
    if (standingSides(record).some(({ deviceId }) => deviceId === event.deviceId)) {
      return because('not-allowed-now', message('sideConcludedAlready'));
    }
    const asked = proofOf(event);
    const whyNot = asked.from === 'menu' ? whyNoMenuDevice : whyNotOnTheWay;
    const why = whyNot(chain, event.deviceId);
    const place = { kind: 'device', deviceId: event.deviceId } as const;
    if (why !== null) return because('device-not-suitable', why, { place });
    const outcome = answerAt(record, chain, asked);
    if ('cause' in outcome) return outcome.cause;
    return (
      refuseUnknownMenu(record, chain, outcome.answer) ?? refuseContradiction(record, chain, outcome.answer)
    );
  },
  outcome: (record, asked) => {
    const found = sideNow(record, asked);
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

export const goOnWithoutSide = rule('goOnWithoutSide', {
  ready: firstOf(noWatchRuns, (record) => {
    if (record.asFound === null) return because('not-allowed-now', message('recordAsFoundFirst'));
    return standingSides(record).length > 0
      ? because('not-allowed-now', message('sideIsKnownAlready'))
      : null;
  }),
  apply: (record, event) => ({
    ...record,
    withoutSide: { reason: event.reason, round: record.round, ...signed(event) },
  }),
});

export const locateSideAgain = rule('locateSideAgain', {
  ready: noWatchRuns,
  apply: (record, event) => ({
    ...record,
    withoutSide: null,
    notes: [...record.notes, { text: event.reason, ...signed(event) }],
  }),
});
