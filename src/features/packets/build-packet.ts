import { buffer } from 'node:stream/consumers';
import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import type { EvidenceRow } from '../evidence-record/index.ts';
import { damageIn } from './damage.ts';
import { gatherCase } from './gather-case.ts';
import { evidenceFiles } from './packet-files.ts';
import { storeBag } from './store-bag.ts';
import type { Thumbnails } from './summary/index.ts';
import { summaryWork } from './summary.work.ts';

/** Photos that the summary shows itself; more of them are linked only. Assumed: 2 MB of thumbnails at most. */
const shownPhotos = 60;

/**
 * Builds the packet of an escalation that the ticket's machine has just accepted, in the same transaction: gathers
 * the case, writes the bag into the evidence store and adds the packet's row. The caller holds the ticket's lock.
 * @param packet version 1 is the first; `at` is when the escalation was accepted, UTC, ISO 8601
 */
export async function buildPacket(
  context: Context,
  packet: { readonly ticketId: string; readonly version: number; readonly at: string },
): Promise<{ readonly packetId: string }> {
  const { tx, actor, services } = context;
  const id = services.newId();
  const { evidence, ...gathered } = await gatherCase(context, { ...packet, id });
  const thumbnails = await thumbnailsOf(services, actor.orgId, evidence);
  const damage = await damageIn(services.evidenceStore, actor.orgId, evidenceFiles(gathered.file));
  const { html: summary } = await services.heavyWork.compute(
    summaryWork,
    { file: gathered.file, thumbnails: [...thumbnails] },
    actor,
  );
  const { evidenceStore: store, config } = services;
  const { signingKey } = config;
  const files = await storeBag({ store, signingKey }, actor.orgId, { ...gathered, summary, damage });
  await tx.packet.create({
    data: {
      orgId: actor.orgId,
      id,
      ticketId: packet.ticketId,
      version: packet.version,
      files,
      news: gathered.file.news as unknown as Prisma.InputJsonArray,
      caseFile: gathered.file as unknown as Prisma.InputJsonObject,
      createdAt: new Date(packet.at),
      createdBy: actor.memberId,
    },
  });
  return { packetId: id };
}

/** Small pictures of the newest photos that stand, as data URIs, so that the summary needs no other file. */
async function thumbnailsOf(
  { evidenceStore }: Services,
  orgId: string,
  evidence: readonly EvidenceRow[],
): Promise<Thumbnails> {
  const pictured = evidence.filter((row) => row.withdrawn === null).slice(-shownPhotos);
  const thumbnails = new Map<string, string>();
  for (const { id, thumbnailSha256 } of pictured) {
    if (thumbnailSha256 === null || (await evidenceStore.check(orgId, thumbnailSha256)) !== 'whole') continue;
    const bytes = await buffer(await evidenceStore.get(orgId, thumbnailSha256));
    thumbnails.set(id, `data:image/jpeg;base64,${bytes.toString('base64')}`);
  }
  return thumbnails;
}
