import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { CaseEvidence, CaseFile } from '../../../shared/contract/packet.ts';
import type { ChangeRecord, CompletenessItem, TriageRecord } from '../../../shared/contract/triage.ts';
import { type Message, message, type NamedPlace } from '../../../shared/message/index.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import { checkedBeforeLeaving, occurrencesIn, standingReports } from '../../../state-machines/index.ts';
import { nameOf } from './summary/words.ts';

type Case = Omit<CaseFile, 'news'>;

/**
 * What a version of a packet says that the one before did not, in the order in which a reader wants it: answers,
 * evidence, watches, reports, sides, changes, what happened between visits, how things stand, the chain, what is still
 * left out.
 */
export function packetNews(before: Case, after: Case): Message[] {
  return [
    ...answers(before, after),
    ...evidence(before, after),
    ...watches(before, after),
    ...reports(before, after),
    ...sides(before, after),
    ...changes(before, after),
    ...betweenVisits(before, after),
    ...standing(before, after),
    ...chain(before, after),
    ...waivers(before, after),
  ];
}

const added = <Item extends { id: string }>(before: readonly Item[], after: readonly Item[]): Item[] => {
  const known = new Set(before.map(({ id }) => id));
  return after.filter(({ id }) => !known.has(id));
};

const place = (file: Case, of: Place): NamedPlace =>
  namedPlace(file.triage.asFound?.chain ?? file.chain.now.chain, of);
const device = (file: Case, deviceId: string): NamedPlace => place(file, { kind: 'device', deviceId });

function answers(before: Case, after: Case): Message[] {
  const answered = new Set(before.triage.requests.flatMap(({ id, answer }) => (answer === null ? [] : [id])));
  return after.triage.requests.flatMap(({ id, text, answer }) =>
    answer === null || answered.has(id)
      ? []
      : [message('news/requestAnswered', { request: text, answer: answer.text })],
  );
}

function evidence(before: Case, after: Case): Message[] {
  const withdrawnBefore = new Set(
    before.evidence.filter((item) => item.withdrawn !== null).map(({ id }) => id),
  );
  const news = added(before.evidence, after.evidence).map((item) =>
    message('news/evidenceAdded', { item: itemOf(after, item) }),
  );
  const gone = after.evidence.flatMap((item) =>
    item.withdrawn === null || withdrawnBefore.has(item.id)
      ? []
      : [message('news/evidenceWithdrawn', { item: itemOf(after, item), reason: item.withdrawn.reason })],
  );
  return [...news, ...gone];
}

function itemOf(file: Case, item: CaseEvidence): Message {
  const { deviceId, linkId } = item.tie;
  const of =
    deviceId !== null
      ? device(file, deviceId)
      : linkId !== null
        ? place(file, { kind: 'link', linkId })
        : null;
  return message('news/evidenceItem', {
    kind: item.kind,
    of,
    reading: readingOf(item),
    description: item.description === '' ? null : item.description,
    fileName: item.path?.replace(/^evidence\//, '') ?? null,
  });
}

/** A reading in few words; of many settings, how many they are. */
function readingOf({ reading }: CaseEvidence): Message | null {
  if (reading === null) return null;
  if (reading.kind === 'firmware') return message('news/levelRead', { level: reading.level });
  if (reading.kind === 'note') return message('news/noteRead', { text: reading.text });
  const settings = Object.entries(reading.values);
  if (settings.length > 3) return message('news/settingsCounted', { settings: settings.length });
  return message('news/settingsRead', {
    settings: settings.map(([setting, value]) =>
      message('news/settingRead', { setting, value: String(value) }),
    ),
  });
}

function watches(before: Case, after: Case): Message[] {
  const fresh = added(before.triage.watches, after.triage.watches);
  const voidedBefore = new Set(
    before.triage.watches.flatMap(({ id, voided }) => (voided === null ? [] : [id])),
  );
  const voided = after.triage.watches.flatMap((watch) =>
    watch.voided === null || voidedBefore.has(watch.id)
      ? []
      : [message('log/watchVoided', { reason: watch.voided.reason })],
  );
  if (fresh.length === 0) return voided;
  return [message('news/watched', { watches: fresh.length, seen: occurrencesIn(fresh).length }), ...voided];
}

function reports(before: Case, after: Case): Message[] {
  const fresh = added(standingReports(before.triage), standingReports(after.triage));
  return fresh.length === 0 ? [] : [message('news/reported', { reports: fresh.length })];
}

const sideKey = ({ deviceId, at, withdrawn, superseded }: TriageRecord['sides'][number]): string =>
  `${deviceId} ${at} ${withdrawn === null} ${superseded === null}`;

function sides(before: Case, after: Case): Message[] {
  const known = new Set(before.triage.sides.map(sideKey));
  return after.triage.sides
    .filter((side) => !known.has(sideKey(side)))
    .map(({ deviceId, side, withdrawn, superseded }) => {
      const at = device(after, deviceId);
      if (withdrawn !== null) return message('log/sideWithdrawn', { device: at, reason: withdrawn.reason });
      if (superseded !== null) return message('log/sideFell', { device: at });
      return message('news/sideFound', { device: at, side });
    });
}

const codeOfStatus = {
  declared: 'news/changeDeclared',
  applied: 'news/changeInPlace',
  judged: 'news/changeJudged',
  restored: 'news/changePutBack',
  kept: 'news/changeKept',
  withdrawn: 'news/changeWithdrawn',
} as const satisfies Record<ChangeRecord['status'], string>;

function changes(before: Case, after: Case): Message[] {
  const known = new Map(before.triage.changes.map((change) => [change.id, stateOf(change)]));
  return after.triage.changes
    .filter((change) => known.get(change.id) !== stateOf(change))
    .map((change) => {
      const made = { change: namedChange(change), place: place(after, change.target) };
      const { enteredLate, declaredAt: madeAt } = change;
      return enteredLate !== null && !known.has(change.id)
        ? message('log/lateChangeEntered', {
            ...made,
            madeAt,
            madeBy: enteredLate.madeBy,
            seen: enteredLate.seen,
          })
        : message(codeOfStatus[change.status], { ...made, verdict: change.judgement?.verdict ?? null });
    });
}

const stateOf = ({ status, judgement }: ChangeRecord): string => `${status} ${judgement?.verdict ?? ''}`;

/** What was left in, chosen by the client, waited for, tried before leaving, and asked after since. */
function betweenVisits({ triage: was }: Case, { triage: is }: Case): Message[] {
  const ended = new Set(was.unattended.flatMap(({ id, endedAt }) => (endedAt === null ? [] : [id])));
  const { leavingCheck } = is;
  return [
    ...added(was.unattended, is.unattended).map(({ until, owner }) =>
      message('log/leftInPlace', { until, owner }),
    ),
    ...is.unattended.flatMap(({ id, endedAt, logged }) =>
      endedAt === null || ended.has(id) ? [] : [message('log/unattendedEnded', { logged: logged.length })],
    ),
    ...is.choices
      .slice(was.choices.length)
      .map(({ way, chosenBy }) => message('log/clientChose', { way, chosenBy })),
    ...is.waits.slice(was.waits.length).map(({ kind, what }) => message('news/waited', { kind, what })),
    ...(leavingCheck === null || leavingCheck.at === was.leavingCheck?.at
      ? []
      : [checkedBeforeLeaving(leavingCheck)]),
  ];
}

function standing(before: Case, after: Case): Message[] {
  const { culprit, remedy } = after.triage;
  const was = before.triage;
  const notes = after.triage.notes
    .slice(was.notes.length)
    .map((note) => message('news/noteBy', { name: nameOf(after, note.by), text: note.text }));
  return [
    ...(culprit !== null && was.culprit?.at !== culprit.at
      ? [message('news/culpritNamed', { place: place(after, culprit.place) })]
      : []),
    ...(culprit === null && was.culprit !== null ? [message('news/culpritWithdrawn')] : []),
    ...(remedy !== null && was.remedy?.what !== remedy.what
      ? [message('news/remedyChosen', { what: remedy.what })]
      : []),
    ...notes,
  ];
}

const chain = (before: Case, after: Case): Message[] =>
  after.chain.versions
    .filter(({ version }) => version > before.chain.now.version)
    .flatMap((version) => version.changes);

function waivers(before: Case, after: Case): Message[] {
  const waived = (file: Case) => file.packet.waivers.map(({ item }) => item);
  const missing = (file: Case) => file.missing.map(({ item }) => item);
  return [
    ...without(missing(before), missing(after)).map((item) => message('news/noLongerMissing', { item })),
    ...without(waived(after), waived(before)).map((item) => message('news/waivedNow', { item })),
  ];
}

const without = (
  items: readonly CompletenessItem[],
  others: readonly CompletenessItem[],
): CompletenessItem[] => [...new Set(items.filter((item) => !others.includes(item)))];
