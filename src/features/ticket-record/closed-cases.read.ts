import type { Chain } from '../../../shared/contract/chain.ts';
import type { Culprit, Remedy } from '../../../shared/contract/triage.ts';
import type { Context } from '../../http/index.ts';

/** Of a closed ticket what says what it was, without the rest of its snapshot. */
export type ClosedCase = {
  readonly id: string;
  readonly number: number;
  readonly siteId: string;
  readonly client: string;
  readonly chainName: string;
  readonly symptom: string;
  readonly closedAt: Date;
  readonly culprit: Culprit | null;
  readonly remedy: Remedy | null;
  /** As it was found; null where nobody recorded it. */
  readonly chain: Chain | null;
};

/** Closed tickets by their ids, in the order of these. */
export async function closedCases({ tx, actor }: Context, ids: readonly string[]): Promise<ClosedCase[]> {
  if (ids.length === 0) return [];
  const cases = await tx.$queryRaw<ClosedCase[]>`
    select t.id, t.number, t.site_id as "siteId", s.client_name as client, c.name as "chainName", t.symptom,
      t.closed_at as "closedAt",
      t.snapshot #> '{context,culprit}' as culprit,
      t.snapshot #> '{context,remedy}' as remedy,
      t.snapshot #> '{context,asFound,chain}' as chain
    from ticket t
    join site s on s.org_id = t.org_id and s.id = t.site_id
    join chain c on c.org_id = t.org_id and c.id = t.chain_id
    where t.org_id = ${actor.orgId}::uuid and t.state = 'closed' and t.id = any(${ids}::uuid[])`;
  const byId = new Map(cases.map((one) => [one.id, one]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}
