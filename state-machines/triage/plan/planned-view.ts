import { samePlace } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { PlannedTestView } from '../../../shared/contract/plan.ts';
import { kitMessage, type PlannedTest } from '../../../shared/isolation/index.ts';
import { message } from '../../../shared/message/message.ts';
import type { ApplicableChange } from '../changes/applicable.ts';

/** Where a menu can be watched, and where a change can be declared: what a planned test begins with there. */
export type Beginning = 'locateSide' | 'substitute' | 'later';

type Context = {
  changes: readonly ApplicableChange[];
  beginning: Beginning;
};

/** A planned test as the API shows it, with what the catalogue says of the change. */
export function plannedView(test: PlannedTest, context: Context): PlannedTestView {
  const { candidate, outcomes, firstChance } = test;
  const { action } = candidate;
  const isMenu = action.kind === 'menu';
  const target = isMenu ? ({ kind: 'device', deviceId: action.deviceId } as const) : action.target;
  const kind = isMenu ? 'menu' : action.test;
  const change = context.changes.find((each) => each.kind === kind && samePlace(each.target, target));
  const [first, second] = isMenu
    ? [message('menuStays'), message('menuVanishes')]
    : [message('faultStaysAway'), message('faultComes')];
  return {
    id: candidate.id,
    kind,
    target,
    text: test.text,
    why: test.why,
    command: commandFor(kind, target, context.beginning),
    minutes: test.minutes,
    quiet: test.quiet,
    expectedMin: test.expectedMin,
    outcomes: [
      { answer: first, chance: firstChance, ...likeliestOf(outcomes.first) },
      { answer: second, chance: 1 - firstChance, ...likeliestOf(outcomes.second) },
    ],
    kit: candidate.kit.map(kitMessage),
    needs: change?.needs ?? [],
    people: candidate.people,
    caution: change?.caution ?? [],
    instructions: change?.instructions ?? message(isMenu ? 'menuInstructions' : 'sourceInstructions'),
    afterwards: change?.afterwards ?? message(isMenu ? 'menuAfterwards' : 'sourceAfterwards'),
  };
}

const likeliestOf = ({ component, named, probability }: PlannedTest['outcomes']['first']) => ({
  component,
  likeliest: message('suspect', { place: named }),
  probability,
});

/** The command a test begins with; null where the ticket isn't at a point at which it can begin. */
function commandFor(kind: string, target: Place, beginning: Beginning): Record<string, unknown> | null {
  if (kind === 'menu') {
    if (target.kind !== 'device' || beginning === 'later') return null;
    if (beginning === 'locateSide') return { type: 'startWatch', menuDeviceId: target.deviceId };
    // Why is for whoever goes back to say.
    return { type: 'locateSideAgain' };
  }
  if (beginning === 'later') return null;
  return beginning === 'locateSide' ? { type: 'beginSubstitution' } : { type: 'declareChange', kind, target };
}
