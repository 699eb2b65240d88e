import type { ClientChoice, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type CompleteCommandOf, type EventOf, momentOf, type TriageEvent } from '../events.ts';
import { filed, signed } from '../record.ts';
import { refuseUnknownPlace } from './culprit.ts';
import { because, type Cause } from './refusal.ts';
import { chainAsItWas, firstOf, noWatchRuns, rule } from './rule.ts';

const msPerDay = 86_400_000;
/** Days after closing on a repair that nothing has proven, until the client is asked how it holds; assumed. */
export const followUpDays = 14;
/** Days until somebody who could not be reached is asked again, where no day is named; assumed. */
const askAgainDays = 7;
export const daysAfter = (moment: string, days: number): string =>
  new Date(Date.parse(moment) + days * msPerDay).toISOString();

/** What the client chose last in this round; null where they were not asked. */
const choiceOfRound = ({ choices, round }: TriageRecord): ClientChoice | null =>
  choices.findLast((choice) => choice.round === round) ?? null;

export const recordChoice = rule('recordChoice', {
  ready: noWatchRuns,
  apply: (record, { way, offered, chosenBy, ...event }) => ({
    ...record,
    choices: [
      ...record.choices,
      { way, offered, chosenBy, round: record.round, ...signed(event), outcome: null },
    ],
  }),
});

const clientHasChosen = (record: TriageRecord): Cause | null =>
  choiceOfRound(record)?.way === 'replace' ? null : because('not-allowed-now', message('clientChoosesFirst'));

export const replaceOnSuspicion = rule('replaceOnSuspicion', {
  ready: firstOf(noWatchRuns, chainAsItWas, clientHasChosen),
  refuse: (record, command) => refuseUnknownPlace(record, command.place),
  outcome: (record) => {
    const choice = choiceOfRound(record);
    const offered = choice?.offered.find(({ way }) => way === 'replace');
    return {
      chance: offered?.sureness ?? 0,
      acceptedBy: choice?.chosenBy ?? '',
      acceptedAt: choice?.at ?? record.openedAt,
    };
  },
  apply: (record, { place, what, outcome }) => ({
    ...record,
    remedy: { kind: 'onSuspicion', what, place, ...outcome },
    quietProof: null,
  }),
});

/** The record with what came of the last replacement on suspicion, where one was made and nothing is known of it yet. */
export function withOutcomeOfChoice(
  record: TriageRecord,
  event: TriageEvent,
  kind: 'held' | 'cameBack',
): TriageRecord {
  if (record.remedy?.kind !== 'onSuspicion') return record;
  const last = record.choices.findLast(({ way, outcome }) => way === 'replace' && outcome === null);
  const outcome = { kind, ...filed(event) };
  return {
    ...record,
    choices: record.choices.map((choice) => (choice === last ? { ...choice, outcome } : choice)),
  };
}

const asksBy = ({ heard, askAgainBy, ...command }: CompleteCommandOf<'recordFollowUp'>): string | null =>
  heard === 'notReached' ? (askAgainBy ?? daysAfter(momentOf(command), askAgainDays)) : null;

export const recordFollowUp = rule('recordFollowUp', {
  ready: (record) =>
    record.followUp === null || record.followUp.askBy === null
      ? because('not-allowed-now', message('nothingToAskAfter'))
      : null,
  refuse: (_record, command) => {
    const askBy = asksBy(command);
    return askBy !== null && Date.parse(askBy) <= Date.parse(momentOf(command))
      ? because('time-out-of-order', message('waitIsOver', { moment: askBy }))
      : null;
  },
  outcome: (_record, command) => ({ askBy: asksBy(command) }),
  apply: withAnswer,
});

function withAnswer(record: TriageRecord, event: EventOf<'recordFollowUp'>): TriageRecord {
  const { heard, note, outcome } = event;
  const { followUp } = record;
  if (followUp === null) return record;
  const answers = [...followUp.answers, { heard, note, ...signed(event) }];
  const asked = { ...record, followUp: { ...followUp, askBy: outcome.askBy, answers } };
  return heard === 'notReached' ? asked : withOutcomeOfChoice(asked, event, heard);
}
