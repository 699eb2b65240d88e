/** Rows that retention takes away in one go; assumed: few enough that a transaction is over in well under a second. */
export const forgottenAtOnce = 500;
