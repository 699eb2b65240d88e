import type { z } from 'zod';
import { sameModel } from '../../../shared/chain/firmware-level.ts';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { FirmwareLevel, firmwareLevelInput } from '../../../shared/contract/organisation.ts';
import { message } from '../../../shared/message/index.ts';
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

const noLevel = refused('not-found', message('noSuchFirmwareLevel'));

type Row = { id: string; model: string; minimum: string; note: string; version: number; updatedAt: Date };
const view = (row: Row): FirmwareLevel => ({
  id: row.id,
  model: row.model,
  minimum: row.minimum,
  note: row.note,
  version: row.version,
  updatedAt: row.updatedAt.toISOString(),
});

/** The lowest firmware that the organisation accepts, per model. */
export async function firmwareLevels({ tx, actor }: Context): Promise<FirmwareLevel[]> {
  const rows = await tx.firmwareLevel.findMany({ where: { orgId: actor.orgId }, orderBy: { model: 'asc' } });
  return rows.map(view);
}

export async function addFirmwareLevel(
  context: Context,
  input: z.infer<typeof firmwareLevelInput>,
): Promise<Outcome<FirmwareLevel>> {
  const { tx, actor, services } = context;
  const taken = await levelElsewhere(context, input.model, null);
  if (taken !== null) return taken;
  const row = await tx.firmwareLevel.create({
    data: { ...input, orgId: actor.orgId, id: services.newId(), updatedAt: services.now() },
  });
  return created(view(row), addressOf(addresses.firmwareLevel, { id: row.id }));
}

export async function readFirmwareLevel({ tx, actor }: Context, id: string): Promise<Outcome<FirmwareLevel>> {
  const row = await tx.firmwareLevel.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } } });
  return row === null ? noLevel : found(view(row));
}

export async function updateFirmwareLevel(
  context: Context,
  id: string,
  { ifMatch, input }: Update<z.infer<typeof firmwareLevelInput>>,
): Promise<Outcome<FirmwareLevel>> {
  const { tx, actor, services } = context;
  await lockLevel(context, id);
  const current = await readFirmwareLevel(context, id);
  if (!current.ok) return current;
  const conflict = mismatch(ifMatch, current.body) ?? (await levelElsewhere(context, input.model, id));
  if (conflict !== null) return conflict;
  const row = await tx.firmwareLevel.update({
    where: { orgId_id: { orgId: actor.orgId, id } },
    data: { ...input, version: { increment: 1 }, updatedAt: services.now() },
  });
  return found(view(row));
}

export async function removeFirmwareLevel(
  context: Context,
  id: string,
  ifMatch: string | undefined,
): Promise<Outcome<FirmwareLevel>> {
  const { tx, actor } = context;
  await lockLevel(context, id);
  const current = await readFirmwareLevel(context, id);
  if (!current.ok) return current;
  const conflict = mismatch(ifMatch, current.body);
  if (conflict !== null) return conflict;
  await tx.firmwareLevel.delete({ where: { orgId_id: { orgId: actor.orgId, id } } });
  return current;
}

/** Refuses a second level for a model, however it is written: an audit could not tell which one counts. */
async function levelElsewhere(context: Context, model: string, id: string | null): Promise<Refused | null> {
  const levels = await firmwareLevels(context);
  const taken = levels.find((level) => level.id !== id && sameModel(level.model, model));
  if (taken === undefined) return null;
  const { model: known, minimum } = taken;
  return refused('already-exists', message('firmwareLevelExists', { model: known, minimum }));
}

async function lockLevel({ tx, actor }: Context, id: string): Promise<void> {
  await tx.$queryRaw`
    select id from firmware_level where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
}
