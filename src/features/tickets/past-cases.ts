import type { z } from 'zod';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { PastCase, pastCaseQuery } from '../../../shared/contract/past-case.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { type ClosedCase, closedCases, findCase, noTicket } from '../ticket-record/index.ts';
import { findPast, maybeAlike } from './find-past.read.ts';
import { type Compared, commonOf, likenessOf } from './likeness.ts';

/** Assumed: more than these nobody reads through. */
const mostAlike = 30;

type Query = z.infer<typeof pastCaseQuery>;
type Page = { items: PastCase[]; next: string | null };

/** Closed tickets by words, newest first, a page at a time; or those that are like another ticket. */
export async function pastCases(context: Context, query: Query): Promise<Outcome<Page>> {
  if (query.like !== undefined) return casesLike(context, query.like);
  const page = await findPast(context, query);
  if ('ok' in page) return page;
  const cases = await closedCases(context, page.ids);
  return found({ items: cases.map((one) => viewOf(one, null)), next: page.next });
}

async function casesLike(context: Context, like: string): Promise<Outcome<Page>> {
  const now = await findCase(context, like);
  if (now === null) return noTicket;
  const record = now.snapshot.context;
  const compared: Compared = {
    symptom: record.symptom.kind,
    chain: record.asFound?.chain ?? null,
    culprit: record.culprit?.place ?? null,
  };
  const ids = await maybeAlike(context, { symptom: compared.symptom, chain: compared.chain, exceptId: like });
  const alike = (await closedCases(context, ids))
    .map((one) => ({ one, common: commonOf(compared, { ...one, culprit: one.culprit?.place ?? null }) }))
    .map((each) => ({ ...each, likeness: likenessOf(each.common) }))
    .filter(({ likeness }) => likeness > 0)
    .sort((a, b) => b.likeness - a.likeness);
  return found({
    items: alike.slice(0, mostAlike).map(({ one, common }) => viewOf(one, common)),
    next: null,
  });
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
