import { erasureOf } from '../../shared/contract/erased-text.ts';
import type { EvidenceRef } from '../../shared/contract/evidence.ts';
import type { Look, LookKept, LookOf } from '../../shared/contract/look.ts';
import type {
  AuditFindings,
  ChangeRecord,
  Escalation,
  Judgement,
  Occurrence,
  Report,
  SideObservation,
  TriageRecord,
  Wait,
  Watch,
} from '../../shared/contract/triage.ts';
import { openChangeStatuses } from '../../shared/contract/triage-names.ts';
import { goodBaseline } from '../../shared/isolation/quiet-length.ts';
import { momentOf } from './events.ts';

const openStatuses: readonly ChangeRecord['status'][] = openChangeStatuses;
const inPlaceStatuses: readonly ChangeRecord['status'][] = ['applied', 'judged'];

/** The change that is declared, applied or judged and not yet put back, kept or withdrawn; there is one at most. */
export const openChange = (record: TriageRecord): ChangeRecord | null =>
  record.changes.find((change) => openStatuses.includes(change.status)) ?? null;

/** The open change, once something was done to the chain. */
export const changeInPlace = (record: TriageRecord): ChangeRecord | null =>
  record.changes.find((change) => inPlaceStatuses.includes(change.status)) ?? null;

export const runningWatch = (record: TriageRecord): Watch | null =>
  record.watches.find((watch) => watch.endedAt === null) ?? null;

/** Whether nobody has voided it. */
const counts = (watch: Watch): boolean => watch.voided === null;

/** A watch's occurrences, less those that were withdrawn; none of a watch that was voided. */
export const occurrencesOf = (watch: Watch): Occurrence[] =>
  counts(watch) ? watch.occurrences.filter((occurrence) => occurrence.withdrawn === null) : [];

export const occurrencesIn = (watches: readonly Watch[]): Occurrence[] => watches.flatMap(occurrencesOf);

export const minutesBetween = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from)) / 60_000;

/** Minutes that a watch lasted; 0 while it runs. */
export const minutesOf = (watch: Watch): number =>
  watch.endedAt === null ? 0 : minutesBetween(watch.startedAt, watch.endedAt);

export const watchesFor = (record: TriageRecord, ...purposes: Watch['purpose'][]): Watch[] =>
  record.watches.filter(
    (watch) => counts(watch) && watch.round === record.round && purposes.includes(watch.purpose),
  );

/** Whether a watch is one of those before any change of this round, be it voided or not. */
export const isBaseline = (record: TriageRecord, { id, round, purpose }: Watch): boolean =>
  record.cameBackWatchIds.includes(id) ||
  (round === record.round && (purpose === 'reproduce' || purpose === 'side'));

/** The watches that show how often the fault comes to the chain as it is now, before a change. */
export const baselineWatches = (record: TriageRecord): Watch[] =>
  record.watches.filter((watch) => counts(watch) && isBaseline(record, watch));

export const retestWatches = (record: TriageRecord, changeId: string): Watch[] =>
  watchesFor(record, 'retest').filter((watch) => watch.changeId === changeId);

/** The watches since the remedy was finished. */
export const verifyWatches = (record: TriageRecord): Watch[] =>
  record.asLeft === null
    ? []
    : record.watches
        .slice(record.asLeft.watchesBefore)
        .filter((watch) => counts(watch) && watch.purpose === 'verify');

/** The sides concluded in this round, neither taken back nor superseded. */
export const standingSides = (record: TriageRecord): SideObservation[] =>
  record.sides.filter(
    ({ round, withdrawn, superseded }) => round === record.round && withdrawn === null && superseded === null,
  );

/** A side is known, or work goes on without one. */
export const isSideSettled = (record: TriageRecord): boolean =>
  standingSides(record).length > 0 || isWithoutSide(record);

/** Whether work goes on without a side in this round. */
export const isWithoutSide = ({ withoutSide, round }: TriageRecord): boolean => withoutSide?.round === round;

export const changesOfRound = (record: TriageRecord): ChangeRecord[] =>
  record.changes.filter((change) => change.round === record.round);

/** The change that stayed as one of perhaps two, with whose retest this round began; null where it began otherwise. */
export const changeBeforeRound = ({ changes, round }: TriageRecord): ChangeRecord | null =>
  changes.find(({ oneOfTwo, round: then }) => oneOfTwo !== null && then === round - 1) ?? null;

export const standingEvidence = (record: TriageRecord): EvidenceRef[] =>
  record.evidence.filter((item) => item.withdrawn === null);

/** What clients report that counts: neither withdrawn, nor deleted by the client. */
export const standingReports = (record: TriageRecord): Report[] =>
  record.reports.filter(({ occurredAt, withdrawn }) => withdrawn === null && erasureOf(occurredAt) === null);

/** The looks of a kind that count: not withdrawn, and of this round; oldest first. */
export const standingLooks = <Kind extends LookKept['kind']>(
  record: TriageRecord,
  kind: Kind,
): LookOf<Kind>[] =>
  record.looks.filter(
    (look: Look): look is LookOf<Kind> =>
      look.what.kind === kind && look.withdrawn === null && look.round === record.round,
  );

/** Made and over before the chain was recorded as found, which is as they left it. */
const isBeforeFound = ({ asFound }: TriageRecord, { finishedAt }: ChangeRecord): boolean =>
  asFound !== null && finishedAt !== null && Date.parse(finishedAt) <= Date.parse(asFound.at);

/**
 * When the chain was as it is without a change: since the round before and what was kept before it was recorded as
 * found, and up to the first change of this round. Null: no bound on that end.
 */
export function spanBeforeChanges(record: TriageRecord): { from: string | null; to: string | null } {
  const { round, changes } = record;
  const changed = changes.find(
    (change) => change.round === round && change.appliedAt !== null && !isBeforeFound(record, change),
  );
  const over = changes.filter(
    (change) => change.round < round || (change.status === 'kept' && isBeforeFound(record, change)),
  );
  const ends = over.flatMap(({ finishedAt }) => finishedAt ?? []);
  ends.sort((a, b) => Date.parse(a) - Date.parse(b));
  return { from: ends.at(-1) ?? null, to: changed?.appliedAt ?? null };
}

/** Those of the chain as it is, without a change in place. */
export function reportsBeforeChanges(record: TriageRecord): Report[] {
  const { from, to } = spanBeforeChanges(record);
  const undone = changesOfRound(record).filter((change) => isBeforeFound(record, change));
  const isIn = (at: number, start: string | null, end: string | null): boolean =>
    (start === null || at >= Date.parse(start)) && (end === null || at < Date.parse(end));
  return standingReports(record).filter(({ occurredAt }) => {
    const at = Date.parse(occurredAt);
    return isIn(at, from, to) && !undone.some((change) => isIn(at, change.appliedAt, change.finishedAt));
  });
}

/** What clients report of the time since the remedy was done. */
export const reportsSinceRemedy = (record: TriageRecord): Report[] => {
  const { asLeft } = record;
  return asLeft === null
    ? []
    : standingReports(record).filter(({ occurredAt }) => Date.parse(occurredAt) >= Date.parse(asLeft.at));
};

/** Whether the fault was shown: seen in a watch, or reported so often that it can be gone on with. */
export const isShownAtAll = (record: TriageRecord): boolean =>
  occurrencesIn(baselineWatches(record)).length > 0 || reportsBeforeChanges(record).length >= goodBaseline;
/** What the ticket waits for; null while it waits for nothing. */
export const currentWait = (record: TriageRecord): Wait | null =>
  record.waits.findLast(({ ended }) => ended === null) ?? null;

export const currentEscalation = (record: TriageRecord): Escalation | null =>
  record.escalations.at(-1) ?? null;

/** The change, judged cleared and put back in this round, whose fault may now be watched for again. */
export const changeToConfirm = (record: TriageRecord): ChangeRecord | null =>
  changesOfRound(record).findLast(
    (change) => change.status === 'restored' && change.judgement?.verdict === 'cleared',
  ) ?? null;

/** What a retest says of a change, whoever signed it. */
export type Judged = { judgement: Omit<Judgement, 'at' | 'by' | 'override'> | null };

/** Whether the fault still came with a change in place, and more rarely than before, beyond the risk taken. */
export function cameMoreRarely({ judgement }: Judged): boolean {
  if (judgement?.verdict !== 'persists' || !judgement.attributable) return false;
  const { occurrences, riskOfBeingFooled, level } = judgement;
  return occurrences > 0 && riskOfBeingFooled !== null && riskOfBeingFooled <= level;
}

/** The change that was kept and took the fault away, unless the fault was seen again since. */
export function keptCure(record: TriageRecord): ChangeRecord | null {
  const cure = changesOfRound(record).findLast(
    (change) =>
      change.status === 'kept' && change.judgement?.verdict === 'cleared' && change.judgement.attributable,
  );
  if (cure === undefined) return null;
  const since = Date.parse(cure.finishedAt ?? cure.declaredAt);
  const seenSince = occurrencesIn(record.watches).some((occurrence) => Date.parse(occurrence.at) >= since);
  return seenSince ? null : cure;
}

export const isBaselineComplete = (record: TriageRecord): boolean =>
  record.audit !== null && record.whatChanged !== null && record.asFound !== null;

/** Changes one element of a list in the record, found by id. */
export const replaceById = <Item extends { id: string }>(
  items: readonly Item[],
  id: string,
  change: (item: Item) => Item,
): Item[] => items.map((item) => (item.id === id ? change(item) : item));

type Signed = { at: string; by: string; happenedAt?: string | undefined };
/** The signature under what an event leaves in the record: what happens on site carries the time it happened. */
export const signed = (event: Signed): { at: string; by: string } => ({
  at: momentOf(event),
  by: event.by,
});

/** The signature under what happens at a desk. */
export const filed = ({ at, by }: Signed): { at: string; by: string } => ({ at, by });

/** How many findings of the audit, as it was looked at, are this urgent. */
export const countFindings = (
  { findings }: { findings: AuditFindings },
  severity: 'mustFix' | 'shouldFix',
) =>
  Array.isArray(findings)
    ? findings.filter((finding) => finding.severity === severity).length
    : findings[severity];
