import { placeName } from '../../../shared/chain/place.ts';
import type { CaseEvidence, CaseFile } from '../../../shared/contract/packet.ts';
import type { ChangeRecord, CompletenessItem, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeLabel } from '../../../state-machines/index.ts';
import { inEnglish } from './summary/parts.ts';
import { itemWords, nameOf } from './summary/words.ts';

type Case = Omit<CaseFile, 'news'>;

/**
 * What a version of a packet says that the one before did not, in sentences, in the order in which a reader wants
 * them: answers, evidence, watches, sides, changes, how things stand, the chain, what is still left out.
 */
export function packetNews(before: Case, after: Case): string[] {
  return [
    ...answers(before, after),
    ...evidence(before, after),
    ...watches(before, after),
    ...sides(before, after),
    ...changes(before, after),
    ...standing(before, after),
    ...chain(before, after),
    ...waivers(before, after),
  ];
}

const added = <Item extends { id: string }>(before: readonly Item[], after: readonly Item[]): Item[] => {
  const known = new Set(before.map(({ id }) => id));
  return after.filter(({ id }) => !known.has(id));
};

const place = (file: Case, of: Parameters<typeof placeName>[1]): string =>
  placeName(file.triage.asFound?.chain ?? file.chain.now.chain, of);

function answers(before: Case, after: Case): string[] {
  const answered = new Set(before.triage.requests.flatMap(({ id, answer }) => (answer === null ? [] : [id])));
  return after.triage.requests
    .filter(({ id, answer }) => answer !== null && !answered.has(id))
    .map(({ text, answer }) => `Answered: ${text} ${answer?.text ?? ''}`);
}

function evidence(before: Case, after: Case): string[] {
  const withdrawnBefore = new Set(
    before.evidence.filter((item) => item.withdrawn !== null).map(({ id }) => id),
  );
  const news = added(before.evidence, after.evidence).map(
    (item) => `Evidence added: ${itemName(after, item)}.`,
  );
  const gone = after.evidence
    .filter((item) => item.withdrawn !== null && !withdrawnBefore.has(item.id))
    .map((item) => `Evidence withdrawn: ${itemName(after, item)}. ${item.withdrawn?.reason ?? ''}`);
  return [...news, ...gone];
}

/** `firmware of processor 'Cinema processor', 3.10.2`; `photo of the cable from ..., Printed label, 001-photo.jpg`. */
function itemName(file: Case, item: CaseEvidence): string {
  const { deviceId, linkId } = item.tie;
  const of =
    deviceId !== null
      ? ` of ${place(file, { kind: 'device', deviceId })}`
      : linkId !== null
        ? ` of ${place(file, { kind: 'link', linkId })}`
        : '';
  const parts = [
    `${item.kind}${of}`,
    readingWords(item),
    item.description,
    item.path?.replace(/^evidence\//, ''),
  ];
  return parts.filter(Boolean).join(', ');
}

/** A reading in few words; of many settings, how many they are. */
function readingWords({ reading }: CaseEvidence): string {
  if (reading === null) return '';
  if (reading.kind === 'firmware') return reading.level;
  if (reading.kind === 'note') return reading.text;
  const settings = Object.entries(reading.values);
  if (settings.length > 3) return `${settings.length} settings`;
  return settings.map(([key, value]) => `${key}: ${String(value)}`).join(', ');
}

function watches(before: Case, after: Case): string[] {
  const fresh = added(before.triage.watches, after.triage.watches);
  if (fresh.length === 0) return [];
  const seen = fresh.flatMap((watch) =>
    watch.occurrences.filter(({ withdrawn }) => withdrawn === null),
  ).length;
  const more = fresh.length === 1 ? 'One more watch' : `${fresh.length} more watches`;
  return [`${more}, in which the fault came ${seen === 1 ? 'once' : `${seen} times`}.`];
}

const sideKey = ({ deviceId, at, withdrawn }: TriageRecord['sides'][number]): string =>
  `${deviceId} ${at} ${withdrawn === null}`;

function sides(before: Case, after: Case): string[] {
  const known = new Set(before.triage.sides.map(sideKey));
  return after.triage.sides
    .filter((side) => !known.has(sideKey(side)))
    .map((side) => {
      const at = place(after, { kind: 'device', deviceId: side.deviceId });
      if (side.withdrawn !== null) return `The side at ${at} was withdrawn: ${side.withdrawn.reason}`;
      return `Side found: ${side.side === 'input' ? 'upstream' : 'downstream'} of ${at}.`;
    });
}

function changes(before: Case, after: Case): string[] {
  const known = new Map(before.triage.changes.map((change) => [change.id, stateOf(change)]));
  return after.triage.changes
    .filter((change) => known.get(change.id) !== stateOf(change))
    .map((change) => {
      const verdict = change.judgement === null ? '' : `, ${change.judgement.verdict}`;
      return `Change: ${changeLabel(change.kind)}, ${place(after, change.target)}: ${change.status}${verdict}.`;
    });
}

const stateOf = ({ status, judgement }: ChangeRecord): string => `${status} ${judgement?.verdict ?? ''}`;

function standing(before: Case, after: Case): string[] {
  const { culprit, remedy } = after.triage;
  return [
    culprit !== null &&
      before.triage.culprit?.at !== culprit.at &&
      `Culprit named: ${place(after, culprit.place)}.`,
    culprit === null && before.triage.culprit !== null && 'The culprit named before is withdrawn.',
    remedy !== null && before.triage.remedy?.what !== remedy.what && `Remedy: ${remedy.what}`,
    ...after.triage.notes
      .slice(before.triage.notes.length)
      .map((note) => `Note by ${nameOf(after, note.by)}: ${note.text}`),
  ].filter((sentence) => sentence !== false);
}

const chain = (before: Case, after: Case): string[] =>
  after.chain.versions
    .filter(({ version }) => version > before.chain.now.version)
    .flatMap((version) => version.changes)
    .map(inEnglish);

function waivers(before: Case, after: Case): string[] {
  const waived = (file: Case) => file.packet.waivers.map(({ item }) => item);
  const missing = (file: Case) => file.missing.map(({ item }) => item);
  return [
    ...without(missing(before), missing(after)).map((item) => `No longer missing: ${itemWords[item]}.`),
    ...without(waived(after), waived(before)).map((item) => `Waived now: ${itemWords[item]}.`),
  ];
}

const without = (
  items: readonly CompletenessItem[],
  others: readonly CompletenessItem[],
): CompletenessItem[] => [...new Set(items.filter((item) => !others.includes(item)))];
