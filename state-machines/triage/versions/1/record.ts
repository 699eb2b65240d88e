import type { Symptom, Waiver } from '../../../../shared/contract/triage.ts';

// What version 1's arithmetic read of a record, and the questions it asked of it. The types stand here on their own,
// as narrow as can be: today's record has to go on fitting them.

type Withdrawn = { withdrawn: object | null };
type Settings = Readonly<Record<string, unknown>>;

export type Occurrence = Withdrawn & { id: string; at: string; menu: 'stayed' | 'vanished' | null };
export type Watch = {
  id: string;
  round: number;
  purpose: 'reproduce' | 'side' | 'retest' | 'confirm' | 'verify';
  mode: 'time' | 'trigger';
  trigger: string | null;
  startedAt: string;
  endedAt: string | null;
  tries: number;
  occurrences: readonly Occurrence[];
  menuDeviceId: string | null;
  changeId: string | null;
};
export type Change = {
  id: string;
  round: number;
  status: 'declared' | 'applied' | 'judged' | 'restored' | 'kept' | 'withdrawn';
  settings: readonly { deviceId: string; key: string; to: string | number | boolean }[];
  declaredAt: string;
  appliedAt: string | null;
  finishedAt: string | null;
  judgement: { verdict: string } | null;
};
export type Side = Withdrawn & { deviceId: string; round: number };
export type Evidence = Withdrawn & {
  tie: { deviceId: string | null; changeId: string | null };
  reading: { kind: 'settings'; phase: string; values: Settings } | { kind: 'firmware' | 'note' } | null;
};
export type Chain = { devices: readonly { id: string; name: string; role: string }[] };

export type RecordThen = {
  settings: { risk: number };
  /** What version 1 did not know of, as it stands before an event. */
  symptom: Pick<Symptom, 'pattern' | 'onlyWith'>;
  round: number;
  audit: object | null;
  whatChanged: object | null;
  asFound: { chain: Chain } | null;
  asLeft: { watchesBefore: number } | null;
  watches: readonly Watch[];
  reproductionAccepted: boolean;
  cameBackWatchIds: readonly string[];
  sides: readonly Side[];
  changes: readonly Change[];
  evidence: readonly Evidence[];
  escalations: readonly { question: string; waivers: readonly Waiver[]; takenBy: string | null }[];
};

export const openChange = ({ changes }: RecordThen): Change | null =>
  changes.find(({ status }) => ['declared', 'applied', 'judged'].includes(status)) ?? null;
export const changeInPlace = ({ changes }: RecordThen): Change | null =>
  changes.find(({ status }) => ['applied', 'judged'].includes(status)) ?? null;

export const occurrencesOf = ({ occurrences }: Watch): Occurrence[] =>
  occurrences.filter(({ withdrawn }) => withdrawn === null);
export const occurrencesIn = (watches: readonly Watch[]): Occurrence[] => watches.flatMap(occurrencesOf);

export const minutesBetween = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from)) / 60_000;
export const minutesOf = ({ startedAt, endedAt }: Watch): number =>
  endedAt === null ? 0 : minutesBetween(startedAt, endedAt);

export const watchesFor = (record: RecordThen, ...purposes: Watch['purpose'][]): Watch[] =>
  record.watches.filter(({ round, purpose }) => round === record.round && purposes.includes(purpose));
export const baselineWatches = (record: RecordThen): Watch[] => [
  ...record.watches.filter(({ id }) => record.cameBackWatchIds.includes(id)),
  ...watchesFor(record, 'reproduce', 'side'),
];
export const retestWatches = (record: RecordThen, changeId: string): Watch[] =>
  watchesFor(record, 'retest').filter((watch) => watch.changeId === changeId);
export const verifyWatches = ({ asLeft, watches }: RecordThen): Watch[] =>
  asLeft === null ? [] : watches.slice(asLeft.watchesBefore).filter(({ purpose }) => purpose === 'verify');

export const standingSides = (record: RecordThen): Side[] =>
  record.sides.filter(({ round, withdrawn }) => round === record.round && withdrawn === null);
export const standingEvidence = ({ evidence }: RecordThen): Evidence[] =>
  evidence.filter(({ withdrawn }) => withdrawn === null);

/** The change, judged cleared and put back in this round, whose fault could be watched for again. */
export const changeToConfirm = ({ changes, round }: RecordThen): Change | null =>
  changes.findLast(
    (change) =>
      change.round === round && change.status === 'restored' && change.judgement?.verdict === 'cleared',
  ) ?? null;

type Moment = { at: string; happenedAt?: string | undefined };
export const momentOf = ({ at, happenedAt }: Moment): string => happenedAt ?? at;

/** When what an event begins or ends did so: never before the last thing ended, so that no minute counts twice. */
export function startOf({ watches, changes }: RecordThen, event: Moment): string {
  const moments = [
    ...watches.flatMap(({ startedAt, endedAt }) => [startedAt, endedAt]),
    ...changes.flatMap(({ declaredAt, appliedAt, finishedAt }) => [declaredAt, appliedAt, finishedAt]),
  ];
  const last = Math.max(
    ...moments.map((moment) => (moment === null ? -Infinity : Date.parse(moment))),
    -Infinity,
  );
  const moment = momentOf(event);
  return Date.parse(moment) < last ? new Date(last).toISOString() : moment;
}
