import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { Context } from '../../http/index.ts';
import { readSettings } from '../organisation/index.ts';
import { readSite } from '../sites/index.ts';
import { findTicket } from '../ticket-record/index.ts';
import type { OpenDiary, SentReport } from './reports.ts';

/** What was sent by a diary and not deleted, the newest first. */
export async function sentBy(context: Context, { id, ticketId }: OpenDiary): Promise<SentReport[]> {
  const ticket = await findTicket(context, ticketId);
  const reports = ticket?.snapshot.context.reports ?? [];
  return reports
    .filter(({ diaryId, occurredAt }) => diaryId === id && erasureOf(occurredAt) === null)
    .toReversed();
}

/** The zone of the clocks at the client's home; the organisation's where the site names none. */
export async function zoneOf(context: Context, { ticketId }: OpenDiary): Promise<string> {
  const ticket = await findTicket(context, ticketId);
  const site = ticket === null ? null : await readSite(context, ticket.siteId);
  const ofSite = site?.ok === true ? site.body.timeZone : null;
  return ofSite ?? (await readSettings(context)).timeZone;
}
