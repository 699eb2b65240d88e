import { describe, expect, it } from 'vitest';
import type { News } from '../../shared/contract/news.ts';
import { newsKinds } from '../../shared/contract/news.ts';
import { paths } from '../../src/web/api/paths.ts';
import { concerns } from '../../src/web/live/concerns.ts';

const [one, other] = ['6f1f7d5e-0a7c-4b0e-9d43-0d4a2a1f0001', '6f1f7d5e-0a7c-4b0e-9d43-0d4a2a1f0002'];
const concerned = (news: News, all: readonly string[]): string[] => all.filter(concerns(news));

describe('the documents that news concerns', () => {
  it('of a ticket: itself, what is below it, and lists of tickets, and no other ticket', () => {
    const all = [
      paths.ticket(one),
      paths.timeline(one),
      paths.log(one, 3),
      paths.tickets({ state: 'open' }),
      paths.supportQueue,
      paths.ticket(other),
      paths.timeline(other),
      paths.site(one),
      paths.members,
    ];
    expect(concerned({ kind: 'ticket', id: one }, all)).toEqual(all.slice(0, 5));
  });

  it('of a chain: its audit and its site', () => {
    const all = [paths.chain(one), paths.chainAudit(one), paths.site(other), paths.chain(other)];
    expect(concerned({ kind: 'chain', id: one, siteId: other }, all)).toEqual(all.slice(0, 3));
  });

  it('of a firmware level or the organisation: every audit, since its limits hang on them', () => {
    expect(concerned({ kind: 'firmwareLevel', id: one }, [paths.chainAudit(one)])).toHaveLength(1);
    expect(
      concerned({ kind: 'organisation', id: one }, [paths.chainAudit(one), paths.organisation]),
    ).toHaveLength(2);
  });

  it('of every kind: something', () => {
    const all = [
      paths.ticket(one),
      paths.site(one),
      paths.chain(one),
      paths.evidence(one),
      `/packets/${one}`,
      paths.members,
      paths.organisation,
      paths.firmwareLevels,
    ];
    for (const kind of newsKinds)
      expect([
        kind,
        concerned({ kind, id: one, ticketId: one, siteId: one, packetId: one }, all).length > 0,
      ]).toEqual([kind, true]);
  });
});
