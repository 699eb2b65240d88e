import type { TicketSummary } from '../../../../shared/contract/ticket.ts';

type Times = Pick<TicketSummary, 'visitAt' | 'visitMin'>;

/** The town of an address as people write it in one line: what comes last. Common practice; else the whole address. */
export function townOf(address: string): string {
  const parts = address.split(/[,\n]/).map((part) => part.trim());
  return parts.findLast((part) => part !== '') ?? address;
}

/** When a visit ends by its planned length, UTC; null while either is not said. */
export const endOf = ({ visitAt, visitMin }: Times): string | null =>
  visitAt === null || visitMin === null
    ? null
    : new Date(Date.parse(visitAt) + visitMin * 60_000).toISOString();

/** Minutes from one visit's end, or its begin where no length is planned, to the next one's begin; below 0: they overlap. */
export function gapMin(one: Times, next: Times): number | null {
  const from = endOf(one) ?? one.visitAt;
  if (from === null || next.visitAt === null) return null;
  return (Date.parse(next.visitAt) - Date.parse(from)) / 60_000;
}

export const byBegin = (one: Times, other: Times): number =>
  (one.visitAt ?? '').localeCompare(other.visitAt ?? '');
