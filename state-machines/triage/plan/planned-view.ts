import { samePlace } from '../../../shared/chain/place.ts';
import type { PlannedTestView } from '../../../shared/contract/plan.ts';
import { kitMessage, type PlannedTest } from '../../../shared/isolation/index.ts';
import { message } from '../../../shared/message/message.ts';
import { describedChange } from '../changes/described.ts';
import type { Asked } from './asked.ts';

/** A planned test as the API shows it, with what the catalogue says of the change. */
export function plannedView({ facts, changes }: Asked, test: PlannedTest): PlannedTestView {
  const { candidate, outcomes, firstChance } = test;
  const { action } = candidate;
  const isMenu = action.kind === 'menu';
  const target = isMenu ? ({ kind: 'device', deviceId: action.deviceId } as const) : action.target;
  const kind = isMenu ? 'menu' : action.test;
  const own = isMenu ? null : action.own;
  const meant = changes.find(
    (each) => each.kind === kind && each.own?.id === own?.id && samePlace(each.target, target),
  );
  const change = meant === undefined ? undefined : describedChange(facts.chain, meant);
  const [first, second] = isMenu
    ? [message('menuStays'), message('menuVanishes')]
    : [message('faultStaysAway'), message('faultComes')];
  return {
    id: candidate.id,
    kind,
    ownKindId: own?.id ?? null,
    target,
    text: test.text,
    why: test.why,
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
