import type { NewApp, RecoveryCodes, SecondFactors } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, noteOwn, type Outcome, type Refused, refused } from '../../http/index.ts';
import { readSettings } from '../organisation/index.ts';
import { type Account, accountOf } from './account.read.ts';
import { addApp, newAppKey, openProposal, sealProposal, stepOf } from './authenticator-app.ts';
import { renewRecoveryCodes } from './recovery-codes.ts';

/** What I show beside my password. */
export async function listSecondFactors(context: Context): Promise<Outcome<SecondFactors>> {
  const { tx, actor } = context;
  const owner = { orgId: actor.orgId, memberId: actor.memberId };
  const app = await tx.authenticatorApp.findUnique({ where: { orgId_memberId: owner } });
  return found({
    app: app === null ? null : { addedAt: app.addedAt.toISOString(), usedAt: app.usedAt.toISOString() },
    recoveryCodesLeft: await tx.recoveryCode.count({ where: owner }),
    isRequired: await isRequired(context),
  });
}

/** Whether the organisation wants a second factor of a member with this role. */
const isRequired = async (context: Context): Promise<boolean> =>
  context.actor.role === 'admin' && (await readSettings(context)).adminsNeedSecondFactor;

/** A key for an app to take. It is the member's once the app has shown a code of it. */
export async function proposeApp({ tx, actor, services }: Context): Promise<NewApp> {
  const { member, organisation } = await accountOf(tx, actor);
  const { key, uri } = newAppKey({ email: member.email, issuer: organisation.name });
  return { key, uri, proposal: sealProposal(services, actor, key) };
}

/** Turns an app on whose first code fits, and gives the codes for the day on which it is lost. */
export async function confirmApp(
  context: Context,
  { proposal, code }: { proposal: string; code: string },
): Promise<RecoveryCodes | Refused> {
  const { tx, actor, services } = context;
  const owner = { orgId: actor.orgId, memberId: actor.memberId };
  const key = openProposal(services, owner, proposal);
  if (key === null) return fault('/proposal', 'appProposalOld');
  const step = stepOf(key, code.replaceAll(/\s/g, ''), services.now());
  if (step === null) return fault('/code', 'codeWrong');
  if (!(await addApp(tx, services, { ...owner, key, step })))
    return refused('already-exists', message('appThereAlready'));
  await tx.session.updateMany({
    where: { orgId: owner.orgId, id: actor.sessionId ?? '', endedAt: null },
    data: { secondFactor: true },
  });
  await noteOwn(context, { kind: 'appTurnedOn' });
  return { recoveryCodes: await renewRecoveryCodes(tx, owner) };
}

const fault = (pointer: string, code: 'appProposalOld' | 'codeWrong'): Refused =>
  refused('invalid-input', message('fieldsDoNotFit'), { errors: [{ pointer, ...message(code) }] });

/** New codes for recovery; those of before are good no more. */
export async function replaceRecoveryCodes(context: Context): Promise<RecoveryCodes | Refused> {
  const { tx, actor } = context;
  const owner = { orgId: actor.orgId, memberId: actor.memberId };
  if ((await tx.authenticatorApp.count({ where: owner })) === 0)
    return refused('not-found', message('noSecondFactor'));
  await noteOwn(context, { kind: 'recoveryCodesRenewed' });
  return { recoveryCodes: await renewRecoveryCodes(tx, owner) };
}

/** Turns my app off, where I may do without. */
export async function endApp(context: Context): Promise<Outcome<SecondFactors>> {
  const { tx, actor } = context;
  if (await isRequired(context)) return refused('second-factor-missing', message('secondFactorStays'));
  await endSecondFactors(tx, { orgId: actor.orgId, memberId: actor.memberId });
  await noteOwn(context, { kind: 'appTurnedOff' });
  return listSecondFactors(context);
}

/** Takes all second factors from a member who has lost theirs, codes for recovery too. */
export async function endSecondFactors(tx: Context['tx'], { orgId, memberId }: Account): Promise<void> {
  const where = { orgId, memberId };
  await tx.authenticatorApp.deleteMany({ where });
  await tx.recoveryCode.deleteMany({ where });
  await tx.secondStep.deleteMany({ where });
}
