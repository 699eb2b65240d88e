import type { Asked } from '../asked.ts';
import type { Stage } from '../offer.ts';
import type { Choice } from '../tests.ts';
import { baselineStage } from './baseline.ts';
import { openChangeStage } from './change.ts';
import { closedStage, culpritStage, remedyStage, verifyStage } from './ending.ts';
import { escalatedStage, withSecondLine } from './escalated.ts';
import { readyStage } from './ready.ts';
import { reproduceStage } from './reproduce.ts';
import { sideStage } from './side.ts';
import { waitingStage } from './waiting.ts';

/** What each stage asks for. @param choice what to test next; reckoned once it is asked for */
export function stageOf(asked: Asked, choice: () => Choice): Stage {
  const own = ownStageOf(asked, choice);
  return asked.state.startsWith('escalated') || asked.state === 'closed' ? own : withSecondLine(asked, own);
}

function ownStageOf(asked: Asked, choice: () => Choice): Stage {
  const [first] = asked.state.split('.');
  switch (first) {
    case 'baseline':
      return baselineStage(asked);
    case 'reproduce':
      return reproduceStage(asked);
    case 'locateSide':
      return sideStage(asked, choice);
    case 'substitute':
      return openChangeStage(asked) ?? readyStage(asked, choice);
    case 'culpritFound':
      return culpritStage(asked);
    case 'remedy':
      return remedyStage(asked);
    case 'verify':
      return verifyStage(asked);
    case 'waiting':
      return waitingStage(asked);
    case 'escalated':
      return escalatedStage(asked);
    default:
      return closedStage();
  }
}
