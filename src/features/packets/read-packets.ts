import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import type { BagFile, CaseFile, Packet } from '../../../shared/contract/packet.ts';
import type { ByteRange, EvidenceStore } from '../../evidence-store/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { erasedTextsOf } from '../ticket-record/index.ts';
import type { Damage } from './damage.ts';
import { bagFolder, type WrittenFile } from './packet-files.ts';
import { caseFileIn, filesOf, noPacket } from './packet-row.ts';
import { type PacketRow, summaryOf } from './packets.read.ts';
import { zipOf } from './zip.ts';

export type ReadablePacket = {
  readonly row: PacketRow;
  readonly file: CaseFile;
  readonly files: readonly BagFile[];
};

/**
 * A packet of the caller's own organisation, or one that another organisation granted to them, which the database
 * shows for as long as the grant runs. The first reading under a grant is noted in it.
 */
export async function readablePacket(
  { tx, actor, services }: Context,
  id: string,
): Promise<ReadablePacket | null> {
  const row = await tx.packet.findFirst({ where: { id } });
  if (row === null) return null;
  if (row.orgId !== actor.orgId) {
    if (actor.role !== 'support') return null;
    await tx.packetGrant.updateMany({
      where: {
        packetId: id,
        granteeOrgId: actor.orgId,
        granteeMemberId: actor.memberId,
        firstOpenedAt: null,
      },
      data: { firstOpenedAt: services.now() },
    });
  }
  return { row, file: caseFileIn(row), files: filesOf(row) };
}

export async function readPacket(context: Context, id: string): Promise<Outcome<Packet>> {
  const packet = await readablePacket(context, id);
  if (packet === null) return noPacket;
  const { row, file, files } = packet;
  const createdByName = file.people.find((person) => person.id === row.createdBy)?.name ?? row.createdBy;
  const erased = row.orgId === context.actor.orgId ? await erasedTextsOf(context, row.ticketId) : null;
  return found({ ...summaryOf(row, { createdByName, erased }), files: [...files], caseFile: file });
}

/** What a packet is sent as: its summary, or all of it as a zip. */
export type PacketFile = {
  readonly etag: string;
  readonly mediaType: string;
  readonly sizeBytes: number | null;
  readonly fileName: string;
  open(store: EvidenceStore, range: ByteRange | null): Promise<Readable>;
};

/** The packet's summary, as a file of its list. */
export function summaryIn(files: readonly BagFile[]): BagFile {
  const summary = files.find(({ path }) => path === 'data/summary.html');
  if (summary === undefined) throw new Error('a packet without a summary');
  return summary;
}

export function summaryFile({ row, file, files }: ReadablePacket): PacketFile {
  const summary = summaryIn(files);
  return {
    etag: `"${summary.sha256}"`,
    mediaType: 'text/html; charset=utf-8',
    sizeBytes: summary.sizeBytes,
    fileName: `${bagFolder(file)}.html`,
    open: (store, range) => store.get(row.orgId, summary.sha256, range ?? undefined),
  };
}

/** The packet as it lies there: what was damaged since goes along as it is, and `damage.json` names it. */
export function zipFile({ row, file, files }: ReadablePacket, damage: readonly Damage[]): PacketFile {
  const folder = bagFolder(file);
  const tag = zipTag(files);
  return {
    etag: damage.length === 0 ? tag : `"damaged-${digestOf(damage)}-${tag.slice(1)}`,
    mediaType: 'application/zip',
    sizeBytes: null,
    fileName: `${folder}.zip`,
    open: async (store) =>
      zipOf(
        {
          folder,
          files: await lyingThere(store, row.orgId, { files, damage }),
          madeAt: row.createdAt,
          notes: notesOn(damage),
        },
        ({ sha256 }) => store.get(row.orgId, sha256),
      ),
  };
}

/** The tag of a packet that nothing is wrong with: its tag manifest names the hash of everything else. */
export function zipTag(files: readonly BagFile[]): string {
  const tagManifest = files.find(({ path }) => path === 'tagmanifest-sha256.txt');
  if (tagManifest === undefined) throw new Error('a packet without a tag manifest');
  return `"${tagManifest.sha256}"`;
}

const notesOn = (damage: readonly Damage[]): WrittenFile[] =>
  damage.length === 0 ? [] : [{ path: 'damage.json', content: `${JSON.stringify(damage, null, 1)}\n` }];

const digestOf = (damage: readonly Damage[]): string =>
  createHash('sha256').update(JSON.stringify(damage)).digest('hex').slice(0, 16);

/** What there is of a packet, with the sizes that it has now. */
async function lyingThere(
  store: EvidenceStore,
  orgId: string,
  { files, damage }: { readonly files: readonly BagFile[]; readonly damage: readonly Damage[] },
): Promise<BagFile[]> {
  const there: BagFile[] = [];
  for (const file of files) {
    const isDamaged = damage.some(({ path }) => path === file.path);
    const sizeBytes = isDamaged ? await store.size(orgId, file.sha256) : file.sizeBytes;
    if (sizeBytes !== null) there.push({ ...file, sizeBytes });
  }
  return there;
}
