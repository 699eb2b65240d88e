import { z } from 'zod';
import { id, instant, keptText, placeId } from './primitives.ts';
import { checkAnswers } from './triage-names.ts';

export const checkAnswer = z.enum(checkAnswers);

/** Does a source's picture come to a display? */
export const pictureCheck = z.object({ sourceId: placeId, displayId: placeId, answer: checkAnswer });

/** What was tried before leaving: every source once on every display, sound, the usual start. */
export const leavingCheck = z.object({
  pictures: z.array(pictureCheck),
  sound: checkAnswer,
  usualStart: checkAnswer,
  note: keptText,
  at: instant,
  by: id,
});
export type LeavingCheck = z.infer<typeof leavingCheck>;
