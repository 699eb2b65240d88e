import type { Context } from '../../http/index.ts';

/** Each part is a version, or a list of those, of something that a plan is made from. */
type Standing = {
  readonly sequence: number;
  readonly chain: number;
  readonly organisation: number;
  readonly firmware: string | null;
  readonly edids: string | null;
};

/**
 * A text that changes whenever anything does that a plan of this ticket is made from, but the time: the ticket with its
 * logs, the chain, the organisation's settings and figures, its firmware levels, and EDIDs that other tickets of the chain
 * brought. Null when there is no such ticket.
 */
export async function standingOfTicket({ tx, actor }: Context, ticketId: string): Promise<string | null> {
  const [row] = await tx.$queryRaw<Standing[]>`
    select ticket.sequence, chain.version as chain, organisation.version as organisation,
      (select string_agg(id || ' ' || version, ' ' order by id) from firmware_level
        where org_id = ${actor.orgId}::uuid) as firmware,
      (select string_agg(evidence.id || ' ' || (withdrawn is null), ' ' order by evidence.id) from evidence
        join ticket as of on of.org_id = evidence.org_id and of.id = evidence.ticket_id
        where evidence.org_id = ${actor.orgId}::uuid and kind = 'edid' and of.chain_id = ticket.chain_id) as edids
    from ticket
    join chain on chain.org_id = ticket.org_id and chain.id = ticket.chain_id
    join organisation on organisation.org_id = ticket.org_id
    where ticket.org_id = ${actor.orgId}::uuid and ticket.id = ${ticketId}::uuid`;
  return row === undefined ? null : JSON.stringify(row);
}
