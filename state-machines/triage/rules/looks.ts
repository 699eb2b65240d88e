import { findDevice, findPort } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { LookKept, LookSent } from '../../../shared/contract/look.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import type { EventOf, Outcomes } from '../events.ts';
import { meetingPoint } from '../looks.ts';
import { changeInPlace, replaceById, signed, standingEvidence, standingLooks } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, notClosed, rule } from './rule.ts';

const chainIsKnown = (record: TriageRecord): Cause | null =>
  record.asFound === null ? because('not-allowed-now', message('recordAsFoundFirst')) : null;

export const recordLook = rule('recordLook', {
  ready: firstOf(notClosed, chainIsKnown),
  refuse: (record, { lookId, what, evidenceId }) => {
    const chain = record.asFound?.chain;
    if (chain === undefined) return chainIsKnown(record);
    if (record.looks.some(({ id }) => id === lookId)) {
      return because('already-exists', message('lookIdTaken'));
    }
    if (evidenceId !== null && !standingEvidence(record).some(({ id }) => id === evidenceId)) {
      return because('unknown-reference', message('evidenceUnknown'));
    }
    return refusePlace(chain, what) ?? refuseNothingBefore(record, what);
  },
  outcome: (record, { what }) => ({
    changeId: changeInPlace(record)?.id ?? null,
    before:
      what.kind === 'signal' && what.said.kind === 'asBefore' ? saidBefore(record, what.deviceId) : null,
  }),
  apply: (record, event) => ({
    ...record,
    looks: [
      ...record.looks,
      {
        id: event.lookId,
        round: record.round,
        what: keptAs(event),
        changeId: event.outcome.changeId,
        evidenceId: event.evidenceId,
        ...signed(event),
        withdrawn: null,
      },
    ],
  }),
});

/** Refuses what is not in the chain, and a witness that has nothing in common with what it stands beside. */
function refusePlace(chain: Chain, what: LookSent): Cause | null {
  const { deviceId } = what;
  const device = findDevice(chain, deviceId);
  if (device === undefined)
    return because('unknown-reference', message('deviceNotInChain', { device: deviceId }));
  const place = { kind: 'device', deviceId } as const;
  if (what.kind === 'portMode' && findPort(chain, what) === undefined) {
    return because('unknown-reference', message('placeNotInChain'), { place });
  }
  if (what.kind !== 'witness') return null;
  const other = findDevice(chain, what.besideId);
  const isSame = other?.role === device.role && other.id !== deviceId;
  const isEnd = device.role === 'display' || device.role === 'source';
  return isSame && isEnd && meetingPoint(chain, what) !== null
    ? null
    : because('device-not-suitable', message('noWitness'), { place });
}

/** What a device said the time before, whenever that was. */
function saidBefore(record: TriageRecord, deviceId: string): Outcomes['recordLook']['before'] {
  const last = standingLooks(record, 'signal').findLast(({ what }) => what.deviceId === deviceId);
  if (last === undefined) return null;
  const { receives, sends, intended } = last.what;
  return { lookId: last.id, receives, sends, intended };
}

const refuseNothingBefore = (record: TriageRecord, what: LookSent): Cause | null =>
  what.kind === 'signal' && what.said.kind === 'asBefore' && saidBefore(record, what.deviceId) === null
    ? because('unknown-reference', message('nothingReadBefore'))
    : null;

function keptAs({ what, outcome: { before } }: EventOf<'recordLook'>): LookKept {
  if (what.kind !== 'signal') return what;
  const { said, ...about } = what;
  if (said.kind === 'read') {
    const { receives, sends, intended } = said;
    return { ...about, receives, sends, intended, sameAs: null };
  }
  const { lookId, receives, sends, intended } = before ?? {
    lookId: null,
    receives: null,
    sends: null,
    intended: [],
  };
  return { ...about, receives, sends, intended, sameAs: lookId };
}

export const withdrawLook = rule('withdrawLook', {
  ready: firstOf(notClosed, (record) =>
    record.looks.some(({ withdrawn }) => withdrawn === null)
      ? null
      : because('not-allowed-now', message('noLookToWithdraw')),
  ),
  refuse: (record, event) => {
    const found = record.looks.find(({ id }) => id === event.lookId);
    if (found === undefined) return because('unknown-reference', message('lookUnknown'));
    return found.withdrawn === null ? null : because('not-allowed-now', message('lookWithdrawnAlready'));
  },
  apply: (record, event) => {
    const withdrawn = { ...signed(event), reason: event.reason };
    return { ...record, looks: replaceById(record.looks, event.lookId, (each) => ({ ...each, withdrawn })) };
  },
});
