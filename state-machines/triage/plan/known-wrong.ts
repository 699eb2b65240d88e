import { samePlace } from '../../../shared/chain/place.ts';
import type { Finding } from '../../../shared/contract/chain.ts';
import type { Offer } from '../../../shared/contract/plan.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { componentAt } from '../../../shared/isolation/components.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import type { PossibleChange } from '../changes/described.ts';
import { changesOfRound } from '../record.ts';
import type { Asked } from './asked.ts';
import { offering } from './offer.ts';
import { plannedView } from './planned-view.ts';
import { declareChange } from './steps.ts';
import { planOfOne } from './tests.ts';

/** What is known to be wrong on the way of the picture; `offer` where a change that applies now mends it. */
type Wrong = { sentence: Message; offer: Offer | null };

/**
 * What the audit found wrong on the way of the picture, each with its place: it comes before anything is swapped, and
 * once something was, it was passed over knowingly. What can be mended by a change comes first.
 */
export function knownWrong(asked: Asked): Wrong[] {
  const { record, known, standing } = asked;
  if (changesOfRound(record).length > 0) return [];
  const wrong = known.findings
    .filter(({ severity, place }) => {
      const isOnTheWay = place.kind === 'chain' || standing.model.scope.path.has(componentAt(place));
      return severity === 'mustFix' && isOnTheWay;
    })
    .map((finding): Wrong => {
      const { text, whatToDo } = finding;
      const offer = mendOffer(asked, finding);
      return offer === null
        ? { sentence: message('worthKnowingFirst', { finding: text, whatToDo }), offer }
        : { sentence: message('putRightFirst', { finding: text }), offer };
    });
  return wrong.toSorted((a, b) => Number(a.offer === null) - Number(b.offer === null));
}

function mendOffer(asked: Asked, { rule, place, text }: Finding): Offer | null {
  const change = asked.changes.find(
    ({ kind, target, tried }) =>
      changeCatalogue[kind].mends.includes(rule) && !tried && samePlace(target, place),
  );
  return change === undefined ? null : offerOf(asked, change, message('putRightFirst', { finding: text }));
}

/** A change as a way on, with what it tells of the fault; null where it can't be made here and now. */
function offerOf(asked: Asked, change: PossibleChange, why: Message): Offer | null {
  const { advice } = planOfOne(asked, change);
  if (advice.kind !== 'test') return null;
  const test = { ...plannedView(asked, advice.next), why };
  return offering([declareChange(change.kind, change.target)], {
    text: test.text,
    why,
    watchMin: test.minutes.watch,
    test,
  });
}
