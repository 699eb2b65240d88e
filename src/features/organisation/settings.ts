import type { z } from 'zod';
import {
  type faultModelReply,
  type OrganisationSettings,
  type organisation,
  organisationSettings,
  type organisationUpdate,
} from '../../../shared/contract/people.ts';
import { faultTable, listFigures, withOverrides } from '../../../shared/isolation/index.ts';
import { compileRecognition } from '../../../shared/logs/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type Actor, found, mismatch, type Outcome, type Refused, refused } from '../../http/index.ts';

type Organisation = z.infer<typeof organisation>;

async function organisationView(tx: TenantTransaction, actor: Actor): Promise<Organisation> {
  const row = await tx.organisation.findUniqueOrThrow({ where: { orgId: actor.orgId } });
  return {
    id: row.orgId,
    handle: row.handle,
    name: row.name,
    settings: organisationSettings.parse(row.settings),
    version: row.version,
  };
}

/** The organisation's numbers, assumed ones where it set none. */
export async function readSettings(tx: TenantTransaction, actor: Actor): Promise<OrganisationSettings> {
  return (await organisationView(tx, actor)).settings;
}

export async function readOrganisation(tx: TenantTransaction, actor: Actor): Promise<Outcome<Organisation>> {
  return found(await organisationView(tx, actor));
}

export async function updateOrganisation(
  tx: TenantTransaction,
  actor: Actor,
  ifMatch: string | undefined,
  input: z.infer<typeof organisationUpdate>,
): Promise<Outcome<Organisation>> {
  const fault = faultIn(input.settings);
  if (fault !== null) return fault;
  await tx.$queryRaw`select org_id from organisation where org_id = ${actor.orgId}::uuid for update`;
  const conflict = mismatch(ifMatch, await organisationView(tx, actor));
  if (conflict !== null) return conflict;
  await tx.organisation.update({
    where: { orgId: actor.orgId },
    data: {
      name: input.name,
      settings: JSON.parse(JSON.stringify(input.settings)),
      version: { increment: 1 },
    },
  });
  return found(await organisationView(tx, actor));
}

/** Overrides of the fault model and rows for logs say more than a schema can check. */
function faultIn({ faultModel, recognition }: OrganisationSettings): Refused | null {
  const table = withOverrides(faultTable, faultModel);
  if (!table.ok) {
    const errors = table.faults.map(({ path, text }) => ({
      pointer: `/settings/faultModel/${path.replaceAll('/', '~1')}`,
      code: 'fault-model',
      text,
    }));
    return refused('invalid-input', `${errors[0]?.text} (${table.faults[0]?.path})`, { errors });
  }
  const words = compileRecognition(recognition);
  if (words.ok) return null;
  const errors = [{ pointer: '/settings/recognition', code: 'recognition', text: words.why }];
  return refused('invalid-input', words.why, { errors });
}

/** Every figure of the fault model: the built-in one, where it is from, and the organisation's own where it set one. */
export async function readFaultModel(
  tx: TenantTransaction,
  actor: Actor,
): Promise<Outcome<z.infer<typeof faultModelReply>>> {
  const { faultModel } = await readSettings(tx, actor);
  const items = listFigures(faultTable).map((figure) => ({
    ...figure,
    own: faultModel[figure.path] ?? null,
  }));
  return found({ items });
}
