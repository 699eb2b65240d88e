import type { Case } from '../say.ts';

type Name = (as?: Case) => string;
/** What there is to say of a kind of change, whatever the place. */
export type ChangeWords = {
  /** What it is called, on screens and inside sentences. */
  label: string;
  /** What to do; asks for the place's name in the case that it takes. */
  order: (name: Name) => string;
  instructions: string;
  afterwards: string;
};
