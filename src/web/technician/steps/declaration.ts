import { samePlace } from '../../../../shared/chain/place.ts';
import type { Settings } from '../../../../shared/contract/chain.ts';
import type { ChangeKind } from '../../../../shared/contract/change.ts';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import type { PlannedTestView, PlanReply } from '../../../../shared/contract/plan.ts';
import { changeCatalogue } from '../../../../shared/isolation/change-catalogue.ts';
import { suspectWords } from '../common/place-words.ts';
import { lastSettings } from './settings.tsx';
import { stepWords } from './step-words.ts';
import type { Work } from './work.ts';

type Meant = Pick<PlannedTestView, 'kind' | 'target'> & { ownKindId?: string | null | undefined };

/** The device whose settings a change touches, with those known of it; null where it touches none. */
export function settingsTouched({ ticket, chain }: Work, { kind, target }: Meant & { kind: ChangeKind }) {
  const touched = changeCatalogue[kind].settings;
  if (touched === null || (target.kind !== 'device' && target.kind !== 'port')) return null;
  const known = lastSettings(ticket.triage, chain, target.deviceId);
  return { deviceId: target.deviceId, known, becomes: usualSetting(known, touched.usual ?? null) };
}

function usualSetting(known: Settings, usual: { about: RegExp; to: string } | null): Record<string, string> {
  const key = usual === null ? undefined : Object.keys(known).find((each) => usual.about.test(each));
  return key === undefined || usual === null ? {} : { [key]: usual.to };
}

/** What a change is expected to do, by the suspect that the plan tests by it. */
export function expectationOf(work: Work, plan: PlanReply | null, change: Meant): string {
  const t = stepWords();
  const tests = plan === null ? [] : [plan.next, ...plan.others];
  const test = tests.find(
    (each) =>
      each?.kind === change.kind &&
      (each.ownKindId ?? null) === (change.ownKindId ?? null) &&
      samePlace(each.target, change.target),
  );
  const suspected = plan?.suspects.find(({ component }) => component === test?.outcomes[0]?.component);
  return suspected === undefined ? t.expectationPlain : t.expectation(suspectWords(work.chain, suspected));
}

/**
 * A change that the plan proposes, declared as it proposes it, with all that has to come before.
 *
 * @returns null where only a person can say what is set to what
 */
export function declaredAsPlanned(
  work: Work,
  plan: PlanReply | null,
  test: PlannedTestView,
): TicketCommand[] | null {
  if (test.kind === 'menu') return null;
  const kind = test.kind as ChangeKind;
  const touched = settingsTouched(work, { kind, target: test.target });
  const settings =
    touched === null
      ? []
      : Object.entries(touched.becomes).map(([key, to]) => ({ deviceId: touched.deviceId, key, to }));
  if (touched !== null && settings.length === 0) return null;
  const declare: TicketCommand = {
    type: 'declareChange',
    kind,
    target: test.target,
    detail: '',
    expected: expectationOf(work, plan, test),
    settings,
    ownKindId: test.ownKindId ?? null,
    mayStay: false,
  };
  return work.ticket.state === 'locateSide' ? [{ type: 'beginSubstitution' }, declare] : [declare];
}
