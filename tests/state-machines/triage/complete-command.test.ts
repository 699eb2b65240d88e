import { describe, expect, it } from 'vitest';
import { ticketCommand } from '../../../shared/contract/commands.ts';
import { message } from '../../../shared/message/index.ts';
import { completeCommand, type KnownFacts, needsOf } from '../../../state-machines/index.ts';
import { homeCinema, withDevice } from '../../chain/build-chain.ts';
import { link, members, opening, type Sent, uuid } from './triage-events.ts';

const chain = withDevice(homeCinema(), 'receiver', { model: 'Quellor R-9', firmware: '1.0' });
const known: KnownFacts = {
  chain,
  chainVersion: 6,
  ownChanges: [],
  findings: [
    {
      rule: 'length-long',
      severity: 'mustFix',
      place: link('L3'),
      placeName: message('asWritten', { sentence: 'The cable' }),
      text: message('asWritten', { sentence: 'It is long.' }),
      whatToDo: message('fitAnotherCable'),
      source: message('computedCapacity'),
      cautions: [],
    },
  ],
  firmwareLevels: [{ model: 'quellor r9', minimum: '2.0' }],
  figures: opening.settings,
};

function complete(sent: Sent, more: Partial<KnownFacts> = {}) {
  let next = 1;
  const sender = { at: opening.at, by: members.technician, role: 'technician' as const };
  const newId = () => uuid(next++);
  return completeCommand(ticketCommand.parse(sent), { ...sender, newId }, { ...known, ...more });
}

describe('a command made complete', () => {
  it('is signed and has every id that was left out; those that were sent stay', () => {
    const watchId = uuid(77);
    expect(complete({ type: 'startWatch', watchId })).toMatchObject({ watchId, by: members.technician });
    expect(complete({ type: 'recordOccurrence' })).toMatchObject({ occurrenceId: uuid(1), at: opening.at });
    expect(
      complete({ type: 'confirmOccurrence', watchId, occurredAt: opening.at, evidenceId: uuid(78) }),
    ).toMatchObject({ occurrenceId: uuid(1) });
    expect(
      complete({ type: 'askForMore', requests: [{ text: 'The EDID' }, { text: 'A log' }] }),
    ).toMatchObject({
      requests: [{ requestId: uuid(1) }, { requestId: uuid(2) }],
    });
  });

  it('brings the chain, the audit by code and the firmware below level where its outcome hangs on them', () => {
    expect(complete({ type: 'recordAsFound', chainVersion: 3 })).toMatchObject({ chain });
    expect(complete({ type: 'reviewAudit', chainVersion: 3 })).toMatchObject({
      known: {
        audit: {
          findings: [{ code: 'length-long', severity: 'mustFix', place: link('L3') }],
          firmwareBelowLevel: ['receiver'],
        },
      },
    });
  });

  it('brings the organisation’s figures with their revision, and none where they are not known', () => {
    expect(complete({ type: 'judgeRetest' })).toMatchObject({ known: { figures: opening.settings } });
    expect(complete({ type: 'judgeRetest' }, { figures: null })).not.toHaveProperty('known');
    expect(complete({ type: 'recordTry' })).not.toHaveProperty('known');
  });
});

describe('what has to be found out for a command', () => {
  const needs = (sent: Sent) => needsOf(ticketCommand.parse(sent));
  it('is the version of the chain that it names, the audit for a look at it, the figures for a verdict, an own kind', () => {
    const nothing = { chainVersion: null, audit: false, figures: false, ownChanges: false };
    expect(needs({ type: 'recordTry' })).toEqual(nothing);
    expect(needs({ type: 'reviewAudit', chainVersion: 3 })).toEqual({
      ...nothing,
      chainVersion: 3,
      audit: true,
    });
    expect(needs({ type: 'finishRemedy', asLeftChainVersion: 4 })).toMatchObject({ chainVersion: 4 });
    expect(needs({ type: 'judgeRetest' })).toMatchObject({ figures: true });
    const declared = { type: 'declareChange', target: link('L3'), expected: 'It stays away' } as const;
    expect(needs({ ...declared, kind: 'reseat' })).toEqual(nothing);
    expect(needs({ ...declared, kind: 'ownKind', ownKindId: uuid(800) })).toEqual({
      ...nothing,
      ownChanges: true,
    });
  });
});
