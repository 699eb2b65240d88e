import type { TriageRecord } from '../../../shared/contract/triage.ts';
import type { CompleteCommand, Consequence, ConsequenceType, EventOf, Stamp } from '../events.ts';
import { filed, replaceById, signed, standingSides } from '../record.ts';
import { supersede } from './changes.ts';
import { setAside } from './culprit.ts';
import { decidedAnew } from './decided-anew.ts';

/** How what follows from a command is taken into the record; computes nothing. */
type Effects = {
  [Type in ConsequenceType]: (record: TriageRecord, event: EventOf<Type>) => TriageRecord;
};
export const consequences: Effects = {
  figuresChanged: (record, { settings }) => ({ ...record, settings }),
  reproductionRevised: (record) => ({ ...record, reproductionAccepted: false }),
  sideRevised: withSideRevised,
  judgementRevised: withJudgementRevised,
  culpritRevised: (record, event) => ({
    ...setAside(record, event, '', 'correction'),
    resumeAt: event.outcome.resumeAt,
  }),
  remedyRevised: (record, event) => setAside(record, event, '', 'correction'),
};

/** The old answer stays, superseded; the new one, where there is one, stands beside it. */
function withSideRevised(record: TriageRecord, event: EventOf<'sideRevised'>): TriageRecord {
  const { deviceId, outcome } = event;
  const old = standingSides(record).find((side) => side.deviceId === deviceId);
  const superseded = { because: 'correction' as const, ...filed(event) };
  const sides = record.sides.map((side) => (side === old ? { ...side, superseded } : side));
  const today = { round: record.round, ...signed(event), withdrawn: null, superseded: null };
  return { ...record, sides: outcome === null ? sides : [...sides, { deviceId, ...outcome, ...today }] };
}

function withJudgementRevised(record: TriageRecord, event: EventOf<'judgementRevised'>): TriageRecord {
  const { changeId, judgement, oneOfTwo } = event.outcome;
  return {
    ...record,
    changes: replaceById(record.changes, changeId, (change) => ({
      ...supersede(change, 'correction', event),
      status: judgement === null && change.status === 'judged' ? 'applied' : change.status,
      judgement: judgement && {
        ...judgement,
        override: change.judgement?.override ?? null,
        ...signed(event),
      },
      oneOfTwo,
    })),
  };
}

type Signed = Stamp & { happenedAt?: string };
const signatureOf = ({ at, by, role, happenedAt }: CompleteCommand): Signed => ({
  at,
  by,
  role,
  ...(happenedAt === undefined ? {} : { happenedAt }),
});

/** What has to be known before a command is decided: the organisation's figures, where they are others by now. */
export function before(record: TriageRecord, command: CompleteCommand): Consequence | null {
  const settings = 'known' in command ? command.known?.figures : undefined;
  return settings === undefined || settings.revision === record.settings.revision
    ? null
    : { type: 'figuresChanged', settings, ...signatureOf(command) };
}

/**
 * What has to be decided again after a command was taken in: one thing at a time, until nothing is left.
 *
 * @param then the record before the command
 */
export function after(
  record: TriageRecord,
  command: CompleteCommand,
  then: TriageRecord,
): Consequence | null {
  const revision = decidedAnew(record, command, then);
  return revision === null ? null : { ...revision, ...signatureOf(command) };
}
