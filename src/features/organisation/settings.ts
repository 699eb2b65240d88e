import type { z } from 'zod';
import {
  type FaultFigure,
  type Organisation,
  type OrganisationSettings,
  organisationSettings,
  type organisationUpdate,
} from '../../../shared/contract/organisation.ts';
import type { Items } from '../../../shared/contract/primitives.ts';
import {
  type FaultTable,
  faultTable,
  listFigures,
  tableOf,
  withOverrides,
} from '../../../shared/isolation/index.ts';
import { compileRecognition } from '../../../shared/logs/index.ts';
import { message } from '../../../shared/message/index.ts';
import type { Database, TenantTransaction } from '../../database/index.ts';
import {
  type Context,
  found,
  mismatch,
  noteOwn,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';

async function organisationView({ tx, actor }: Context): Promise<Organisation> {
  const row = await tx.organisation.findUniqueOrThrow({ where: { orgId: actor.orgId } });
  return {
    id: row.orgId,
    handle: row.handle,
    name: row.name,
    settings: organisationSettings.parse(row.settings),
    version: row.version,
  };
}

/** The organisation's document: its numbers, with the revision that they stand in. */
export const organisationNow = (context: Context): Promise<Organisation> => organisationView(context);

/** The organisation's numbers, assumed ones where it set none. */
export async function readSettings(context: Context): Promise<OrganisationSettings> {
  return (await organisationView(context)).settings;
}

export async function readOrganisation(context: Context): Promise<Outcome<Organisation>> {
  return found(await organisationView(context));
}

export async function updateOrganisation(
  context: Context,
  { ifMatch, input }: Update<z.infer<typeof organisationUpdate>>,
): Promise<Outcome<Organisation>> {
  const { tx, actor } = context;
  const fault = faultIn(input.settings);
  if (fault !== null) return fault;
  await tx.$queryRaw`select org_id from organisation where org_id = ${actor.orgId}::uuid for update`;
  const conflict = mismatch(ifMatch, await organisationView(context));
  if (conflict !== null) return conflict;
  await tx.organisation.update({
    where: { orgId: actor.orgId },
    data: {
      name: input.name,
      settings: JSON.parse(JSON.stringify(input.settings)),
      version: { increment: 1 },
    },
  });
  await noteOwn(context, { kind: 'organisationChanged' });
  return found(await organisationView(context));
}

/** The next running number of a ticket; the row's lock makes openings wait for each other. */
export async function takeTicketNumber({ tx, actor }: Context): Promise<number> {
  const { nextTicketNumber } = await tx.organisation.update({
    where: { orgId: actor.orgId },
    data: { nextTicketNumber: { increment: 1 } },
    select: { nextTicketNumber: true },
  });
  return nextTicketNumber - 1;
}

export type NewOrganisation = {
  readonly orgId: string;
  readonly handle: string;
  readonly name: string;
  readonly settings?: z.input<typeof organisationSettings> | undefined;
};

/** Whether an organisation signs in under that handle. */
export const hasHandle = async (database: Database, handle: string): Promise<boolean> =>
  (await database.lookUp((tx) =>
    tx.organisation.findUnique({ where: { handle }, select: { orgId: true } }),
  )) !== null;

/** Adds an organisation; for whoever provisions, never for a route. */
export async function insertOrganisation(
  tx: TenantTransaction,
  { settings, ...columns }: NewOrganisation,
): Promise<void> {
  const parsed = organisationSettings.parse(settings ?? {});
  await tx.organisation.create({ data: { ...columns, settings: JSON.parse(JSON.stringify(parsed)) } });
}

/** For how many days the organisation's audit log keeps an entry. */
export async function keptAuditLogDays(tx: TenantTransaction, orgId: string): Promise<number> {
  const row = await tx.organisation.findUniqueOrThrow({ where: { orgId }, select: { settings: true } });
  return organisationSettings.parse(row.settings).auditLogDays;
}

/** The figures that plans rest on, with the organisation's own in place of the built-in ones. */
export async function readFaultTable(context: Context): Promise<FaultTable> {
  return tableOf((await readSettings(context)).faultModel);
}

/** The organisation's figures and its own kinds, for what changes apply. */
export async function figuresForChanges(context: Context) {
  const { faultModel, ownChanges } = await readSettings(context);
  return { table: tableOf(faultModel), ownChanges };
}

/** Own kinds of change are told apart by id and, on the phone, by name. */
function sharedBy({ ownChanges }: OrganisationSettings) {
  return ownChanges.flatMap((change, at) => {
    const earlier = ownChanges.slice(0, at);
    return (['id', 'name'] as const)
      .filter((part) => earlier.some((other) => other[part].toLowerCase() === change[part].toLowerCase()))
      .map((part) => ({ pointer: `/settings/ownChanges/${at}/${part}`, ...message('fieldThereAlready') }));
  });
}

/** Overrides of the fault model, rows for logs and own kinds of change say more than a schema can check. */
function faultIn(settings: OrganisationSettings): Refused | null {
  const { faultModel, recognition } = settings;
  const twice = sharedBy(settings);
  if (twice.length > 0) return refused('invalid-input', message('fieldsDoNotFit'), { errors: twice });
  const table = withOverrides(faultTable, faultModel);
  if (!table.ok) {
    const errors = table.faults.map(({ path, fault }) => ({
      pointer: `/settings/faultModel/${path.replaceAll('/', '~1')}`,
      ...fault,
    }));
    return refused('invalid-input', message('fieldsDoNotFit'), { errors });
  }
  const words = compileRecognition(recognition);
  if (words.ok) return null;
  const errors = [{ pointer: '/settings/recognition', ...words.why }];
  return refused('invalid-input', message('fieldsDoNotFit'), { errors });
}

/** Every figure of the fault model: the built-in one, where it is from, and the organisation's own where it set one. */
export async function readFaultModel(context: Context): Promise<Outcome<Items<FaultFigure>>> {
  const { faultModel } = await readSettings(context);
  const items = listFigures(faultTable).map((figure) => ({
    ...figure,
    own: faultModel[figure.path] ?? null,
  }));
  return found({ items });
}
