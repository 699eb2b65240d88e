import type { CaseFile } from '../../../shared/contract/packet.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { standingOf } from '../../../shared/isolation/index.ts';
import { byComponent } from '../../../shared/isolation/posterior.ts';
import { caseOf } from '../../../state-machines/index.ts';
import type { Context } from '../../http/index.ts';
import { requestFor } from './known-case.ts';

const here = { kit: null, people: 1, refused: [] } as const;

/** What can be at fault on a ticket, the likeliest first, and what earlier rounds count for in that; empty without a ticket. */
export async function suspectsOn(
  context: Context,
  ticketId: string,
): Promise<Pick<CaseFile, 'suspects' | 'earlierRoundsCount'>> {
  const asked = await requestFor(context, ticketId, here);
  if (asked === null) return { suspects: [], earlierRoundsCount: null };
  const { snapshot, request } = asked;
  const { model, chances } = standingOf(caseOf(snapshot.context, request.known), request.table);
  const suspects = [...byComponent(model, chances)]
    .map(([component, probability]) => ({
      place: model.components.known.get(component)?.place ?? null,
      // sums of many chances may come out a last digit above 1
      probability: Math.min(1, probability),
    }))
    .sort((one, other) => other.probability - one.probability);
  const earlierRoundsCount =
    snapshot.context.round === 1 ? null : figureOf(model.table.weighing.trust, 'earlierRound');
  return { suspects, earlierRoundsCount };
}
