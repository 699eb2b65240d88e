/**
 * One row of the recognition table: plain data, so that anyone can add one and an organisation can keep its own.
 *
 * A line is of this kind when it has at least one word of every group in `all`, in any order, and none of `none`.
 * A word is whole (`low` isn't in `slow`), case doesn't count, a space in it stands for whatever parts words (`hot
 * plug` finds `Hot-Plug`), and `*` at its end leaves it open. Rows hold no regular expressions: with words alone no
 * row can make reading a log slow.
 */
export type RecognitionRow = {
  kind: string;
  all: readonly (readonly string[])[];
  none?: readonly string[];
  /** Words of other trades: with one of these the line is of this kind only if it names something of ours too. */
  unlessOurs?: readonly string[];
  /** The line has to say that a state or a figure turned from one into another, this way. See `turn.ts`. */
  turn?: Turn;
  /** A line that the row finds, made up; it is tried when the row is taken in. */
  example: string;
  note: string;
};

/** `off`, `on`: a state for the worse or the better; `lower`, `higher`: a figure. */
export type Turn = 'off' | 'on' | 'lower' | 'higher';
