import { heldBack } from '../logs/lines/held-back.ts';
import { heldBackOnce } from '../logs/lines/held-back-once.ts';
import { scoreOf, sumOf } from '../logs/lines/score.ts';
import { tunedOn } from '../logs/lines/tuned-on.ts';
import { writtenFirst } from '../logs/lines/written-first.ts';

/** Prints how both sets of made-up lines are read, class by class. */
for (const [name, set] of Object.entries({ tunedOn, writtenFirst, heldBackOnce, heldBack })) {
  const score = scoreOf(set);
  console.log(name);
  console.table(score);
  console.log(sumOf(score));
}
