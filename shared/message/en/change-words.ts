/** What there is to say of a kind of change, whatever the place. */
export type ChangeWords = {
  /** What it is called, on screens and inside sentences. */
  label: string;
  /** What to do; the place's name goes in. */
  order: (place: string) => string;
  instructions: string;
  /** When it was judged. */
  afterwards: string;
};
