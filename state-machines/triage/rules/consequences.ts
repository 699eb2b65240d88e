import type { TriageRecord } from '../../../shared/contract/triage.ts';
import type { CompleteCommand, Consequence, ConsequenceType, EventOf, Stamp } from '../events.ts';
import { baselineWatches, occurrencesIn } from '../record.ts';

/** How what follows from a command is taken into the record; computes nothing. */
type Effects = {
  [Type in ConsequenceType]: (record: TriageRecord, event: EventOf<Type>) => TriageRecord;
};
export const consequences: Effects = {
  figuresChanged: (record, { settings }) => ({ ...record, settings }),
  reproductionRevised: (record) => ({ ...record, reproductionAccepted: false }),
};

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

/** What has to be decided again after a command was taken in: one thing at a time, until nothing is left. */
export function after(record: TriageRecord, command: CompleteCommand): Consequence | null {
  if (record.reproductionAccepted && occurrencesIn(baselineWatches(record)).length === 0) {
    return { type: 'reproductionRevised', ...signatureOf(command) };
  }
  return null;
}
