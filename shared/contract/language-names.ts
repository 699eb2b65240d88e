// A list that is needed at run time apart from the schemas made of it, as in triage-names.ts.

/** The languages that the program speaks, by their tags (RFC 5646); the first where nobody asks. */
export const languageTags = ['en', 'de'] as const;
export type LanguageTag = (typeof languageTags)[number];
