import { chainDiff } from '../../../shared/chain/diff.ts';
import { chainFaults } from '../../../shared/chain/validate.ts';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import type { Prisma } from '../../database/index.ts';
import {
  type Context,
  created,
  found,
  mismatch,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';
import { hasSite, noSite } from '../sites/index.ts';
import { changesOf, documentOf } from './chain-row.ts';

export const noChain = refused('not-found', message('noSuchChain'));
export const noVersion = refused('not-found', message('noSuchChainVersion'));

/** A version of a chain; the newest when `version` is left out. */
export async function readChain(
  { tx, actor }: Context,
  chainId: string,
  version?: number,
): Promise<Outcome<ChainDocument>> {
  const { orgId } = actor;
  const [head, row] = await Promise.all([
    tx.chain.findUnique({ where: { orgId_id: { orgId, id: chainId } } }),
    tx.chainVersion.findFirst({
      where: { orgId, chainId, ...(version === undefined ? {} : { version }) },
      orderBy: { version: 'desc' },
    }),
  ]);
  if (head === null) return noChain;
  if (row === null) return noVersion;
  return found({
    id: chainId,
    siteId: head.siteId,
    version: row.version,
    chain: documentOf(row),
    changedAt: row.changedAt.toISOString(),
    changedBy: row.changedBy,
    changes: changesOf(row),
  });
}

/** Locks a chain for the rest of the transaction. */
export async function lockChain({ tx, actor }: Context, id: string): Promise<void> {
  await tx.$queryRaw`select id from chain where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
}

/** The site that a chain is at; null when there is no such chain. */
export async function siteOfChain({ tx, actor }: Context, id: string): Promise<string | null> {
  const row = await tx.chain.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } } });
  return row?.siteId ?? null;
}

export async function addChain(
  context: Context,
  siteId: string,
  document: Chain,
): Promise<Outcome<ChainDocument>> {
  const { tx, actor, services } = context;
  if (!(await hasSite(context, siteId))) return noSite;
  const faulty = refusalOf(document);
  if (faulty !== null) return faulty;
  const id = services.newId();
  const head = { name: document.name, searchText: searchTextOf(document) };
  await tx.chain.create({
    data: { ...head, orgId: actor.orgId, id, siteId, version: 1, createdAt: services.now() },
  });
  await addVersion(context, id, { version: 1, document, changes: [message('firstDescription')] });
  const stored = await readChain(context, id);
  return stored.ok ? created(stored.body, addressOf(addresses.chain, { id })) : stored;
}

/** Replaces the whole chain with a new version; the ones before stay readable. The same chain again is no new version. */
export async function replaceChain(
  context: Context,
  chainId: string,
  { ifMatch, input: document }: Update<Chain>,
): Promise<Outcome<ChainDocument>> {
  await lockChain(context, chainId);
  const current = await readChain(context, chainId);
  if (!current.ok) return current;
  const refusal = mismatch(ifMatch, current.body) ?? refusalOf(document);
  if (refusal !== null) return refusal;
  const changes = differences(current.body.chain, document);
  if (changes.length === 0) return current;
  return nextVersion(context, current.body, { document, changes });
}

const differences = (before: Chain, after: Chain): Message[] =>
  chainDiff(before, after).map(({ sentence }) => sentence);

/** The chain, which the caller has locked, as a repair leaves it: a version of its own, also where it reads the same. */
export async function describeAsLeft(
  context: Context,
  chainId: string,
  document: Chain,
): Promise<Outcome<ChainDocument>> {
  const current = await readChain(context, chainId);
  if (!current.ok) return current;
  const refusal = refusalOf(document);
  if (refusal !== null) return refusal;
  const changes = differences(current.body.chain, document);
  return nextVersion(context, current.body, { document, changes });
}

async function nextVersion(
  context: Context,
  { id: chainId, version: before }: ChainDocument,
  { document, changes }: Omit<NewVersion, 'version'>,
): Promise<Outcome<ChainDocument>> {
  const { tx, actor } = context;
  const version = before + 1;
  await tx.chain.update({
    where: { orgId_id: { orgId: actor.orgId, id: chainId } },
    data: { name: document.name, searchText: searchTextOf(document), version },
  });
  await addVersion(context, chainId, { version, document, changes });
  return readChain(context, chainId);
}

type NewVersion = { version: number; document: Chain; changes: Message[] };

async function addVersion(
  { tx, actor, services }: Context,
  chainId: string,
  { version, document, changes }: NewVersion,
): Promise<void> {
  await tx.chainVersion.create({
    data: {
      orgId: actor.orgId,
      chainId,
      version,
      document: document as unknown as Prisma.InputJsonObject,
      changes: changes as unknown as Prisma.InputJsonArray,
      changedBy: actor.memberId,
      changedAt: services.now(),
    },
  });
}

function refusalOf(document: Chain): Refused | null {
  const faults = chainFaults(document);
  const first = faults[0];
  if (first === undefined) return null;
  return refused('chain-refused', message('sentences', { sentences: faults.map(({ said }) => said) }), {
    place: first.place,
    errors: faults.map(({ pointer, said }) => ({ pointer, ...said })),
  });
}

/** What a search for a site looks through in its chains. */
const searchTextOf = (document: Chain): string =>
  [
    ...document.devices.flatMap((device) => [device.serial, device.model]),
    ...document.links.map(({ id }) => id),
  ]
    .filter((part) => part !== null)
    .join('\n')
    .toLowerCase();
