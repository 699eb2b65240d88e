import type { z } from 'zod';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { PastCase, pastCaseQuery } from '../../../shared/contract/past-case.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { type ClosedCase, closedCases, findCase, noTicket } from '../ticket-record/index.ts';
import { type Compared, commonOf, likenessOf } from './likeness.ts';

/** Assumed: more than these nobody reads through. */
const most = 30;

/** Closed tickets by words, or by what they have in common with another ticket. */
export async function pastCases(
  context: Context,
  { like, symptom, q = '' }: z.infer<typeof pastCaseQuery>,
): Promise<Outcome<{ items: PastCase[] }>> {
  const now = like === undefined ? null : await findCase(context, like);
  if (like !== undefined && now === null) return noTicket;
  const words = q.toLowerCase().split(/\s+/);
  const closed = (await closedCases(context, symptom)).filter((one) => hasAll(one, words));
  if (now === null) return found({ items: closed.slice(0, most).map((one) => viewOf(one, null)) });
  const record = now.snapshot.context;
  const compared: Compared = {
    symptom: record.symptom.kind,
    chain: record.asFound?.chain ?? null,
    culprit: record.culprit?.place ?? null,
  };
  const alike = closed
    .filter(({ id }) => id !== like)
    .map((one) => ({ one, common: commonOf(compared, { ...one, culprit: one.culprit?.place ?? null }) }))
    .map((each) => ({ ...each, likeness: likenessOf(each.common) }))
    .filter(({ likeness }) => likeness > 0)
    .sort((a, b) => b.likeness - a.likeness);
  return found({ items: alike.slice(0, most).map(({ one, common }) => viewOf(one, common)) });
}

function hasAll({ number, client, chainName, chain, culprit, remedy }: ClosedCase, words: readonly string[]) {
  const text = [
    String(number),
    client,
    chainName,
    ...(chain?.devices ?? []).flatMap(({ name, model, serial }) => [name, model, serial]),
    ...(chain?.links ?? []).map(({ id }) => id),
    culprit?.explanation,
    remedy?.what,
  ]
    .join('\n')
    .toLowerCase();
  return words.every((word) => text.includes(word));
}

function viewOf(one: ClosedCase, common: PastCase['common']): PastCase {
  const { chain, culprit, remedy, closedAt, ...row } = one;
  return {
    ...row,
    symptom: row.symptom as PastCase['symptom'],
    closedAt: closedAt.toISOString(),
    culprit:
      culprit === null || chain === null
        ? null
        : message('suspect', { place: namedPlace(chain, culprit.place) }),
    explanation: culprit?.explanation ?? '',
    remedy: remedy === null ? null : { kind: remedy.kind, what: remedy.what },
    common,
  };
}
