import { samePlace } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { PlannedTestView } from '../../../shared/contract/plan.ts';
import { kitText, type PlannedTest, type WatchRecord } from '../../../shared/isolation/index.ts';
import type { ApplicableChange } from '../changes/applicable.ts';

/** Where a menu can be watched, and where a change can be declared: what a planned test begins with there. */
export type Beginning = 'locateSide' | 'substitute' | 'later';

type Context = {
  changes: readonly ApplicableChange[];
  mode: WatchRecord['mode'];
  beginning: Beginning;
};

const menuInstructions =
  'Bring up the menu with the remote control and leave it in the picture. When the fault comes, look at the menu: does it stay, or does it vanish with the picture?';
const sourceInstructions =
  'Leave everything plugged in as it is and play the other source with the same kind of content.';

/** A planned test as the API shows it, with what the catalogue says of the change. */
export function plannedView(test: PlannedTest, context: Context): PlannedTestView {
  const { candidate, outcomes, firstChance } = test;
  const { action } = candidate;
  const isMenu = action.kind === 'menu';
  const target = isMenu ? ({ kind: 'device', deviceId: action.deviceId } as const) : action.target;
  const kind = isMenu ? 'menu' : action.test;
  const change = context.changes.find((each) => each.kind === kind && samePlace(each.target, target));
  const [first, second] = isMenu ? ['The menu stays', 'The menu vanishes'] : ['It stays away', 'It comes'];
  return {
    id: candidate.id,
    kind,
    target,
    text: test.text,
    why: test.why,
    command: commandFor(kind, target, context.beginning),
    minutes: test.minutes,
    quiet: isMenu ? null : { mode: context.mode, amount: test.exposure },
    expectedMin: test.expectedMin,
    outcomes: [
      {
        answer: first,
        chance: firstChance,
        likeliest: outcomes.first.name,
        probability: outcomes.first.probability,
      },
      {
        answer: second,
        chance: 1 - firstChance,
        likeliest: outcomes.second.name,
        probability: outcomes.second.probability,
      },
    ],
    kit: candidate.kit.map(kitText),
    needs: change?.needs ?? [],
    people: candidate.people,
    caution: change?.caution ?? [],
    instructions: change?.instructions ?? (isMenu ? menuInstructions : sourceInstructions),
    afterwards:
      change?.afterwards ??
      (isMenu ? 'Take the menu off the picture again.' : 'Go back to the usual source.'),
  };
}

/** The command a test begins with; null where the ticket isn't at a point at which it can begin. */
function commandFor(kind: string, target: Place, beginning: Beginning): Record<string, unknown> | null {
  if (kind === 'menu') {
    if (target.kind !== 'device' || beginning === 'later') return null;
    if (beginning === 'locateSide') return { type: 'startWatch', menuDeviceId: target.deviceId };
    return { type: 'locateSideAgain', reason: 'Another menu tells more than a change would now.' };
  }
  if (beginning === 'later') return null;
  return beginning === 'locateSide' ? { type: 'beginSubstitution' } : { type: 'declareChange', kind, target };
}
