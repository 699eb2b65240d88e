import type { KeyObject } from 'node:crypto';
import type { BagFile } from '../../../shared/contract/packet.ts';
import type { TenantTransaction } from '../../database/index.ts';
import type { Condition } from '../../evidence-store/index.ts';
import { isBagSignedBy, signatureName } from './bag-signature.ts';
import { filesOf } from './packet-row.ts';

export type PacketFault = {
  readonly ticket: number;
  readonly version: number;
  readonly path: string;
  readonly is: 'damaged' | 'missing' | 'not signed' | "not signed by this server's key";
};

type Reading = {
  conditionOf(sha256: string): Promise<Condition>;
  /** Of a file that is whole. */
  contentOf(sha256: string): Promise<Buffer>;
  readonly key: KeyObject;
};

/** Reads every file of every packet of a tenant, and tells which are not what was packed, and what this server did not sign. */
export async function checkPackets(
  inTenant: <T>(work: (tx: TenantTransaction) => Promise<T>) => Promise<T>,
  orgId: string,
  { conditionOf, contentOf, key }: Reading,
): Promise<{ readonly packets: number; readonly faults: PacketFault[] }> {
  const rows = await inTenant((tx) =>
    tx.packet.findMany({
      where: { orgId },
      select: { version: true, files: true, ticket: { select: { number: true } } },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    }),
  );
  const faults: PacketFault[] = [];
  for (const { version, files, ticket } of rows) {
    const listed = filesOf({ files });
    const tell = (path: string, is: PacketFault['is']) =>
      faults.push({ ticket: ticket.number, version, path, is });
    for (const { path, sha256 } of listed) {
      const condition = await conditionOf(sha256);
      if (condition !== 'whole') tell(path, condition);
    }
    const wholeOf = async (name: string): Promise<Buffer | null> => {
      const sha256 = listed.find(({ path }) => path === name)?.sha256;
      if (sha256 === undefined || (await conditionOf(sha256)) !== 'whole') return null;
      return contentOf(sha256);
    };
    const [manifest, signature] = [await wholeOf(tagManifestName), await wholeOf(signatureName)];
    if (!listed.some(({ path }) => path === signatureName)) tell(tagManifestName, 'not signed');
    else if (manifest !== null && signature !== null && !isBagSignedBy(key, manifest, signature))
      tell(tagManifestName, "not signed by this server's key");
    for (const list of [manifest, await wholeOf(manifestName)])
      for (const path of list === null ? [] : unlike(listed, list)) tell(path, 'damaged');
  }
  return { packets: rows.length, faults };
}

/** Files that the packet's row lists with another hash than a manifest of the packet does, which its signature covers. */
function unlike(listed: readonly BagFile[], manifest: Buffer): string[] {
  const signed = new Map(
    String(manifest)
      .split('\n')
      .map((line) => [line.slice(66), line.slice(0, 64)]),
  );
  return listed
    .filter(({ path, sha256 }) => signed.has(path) && signed.get(path) !== sha256)
    .map(({ path }) => path);
}

const [manifestName, tagManifestName] = ['manifest-sha256.txt', 'tagmanifest-sha256.txt'];
