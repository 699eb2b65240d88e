// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

/** How long the picture was away, as a client can tell. */
export const lastedAnswers = ['aMoment', 'someSeconds', 'aMinute', 'longer'] as const;
export type LastedAnswer = (typeof lastedAnswers)[number];
/** Whether it came back by itself. A person’s own words are never just that, so that these can be erased alone. */
export const cameBackAnswers = ['byItself', 'notByItself'] as const;
export type CameBackAnswer = (typeof cameBackAnswers)[number];

/** Days that a diary may be open, and those it is where nobody says; assumed. */
export const diaryDays = { least: 1, most: 90, usual: 21 } as const;
