/**
 * Codes of messages (shared/message/codes/fields.ts) that a schema gives where a text has a form of its own or a rule
 * more than a type. A schema gives one in place of zod's sentence, its values as `params`.
 */
const misfits = [
  'fieldNotPlaceId',
  'fieldNotHandle',
  'fieldNotKindName',
  'fieldNotHexadecimal',
  'fieldNotVideoFormat',
  'fieldNotJson',
  'fieldMomentFar',
  'fieldTooMany',
] as const;
export type Misfit = (typeof misfits)[number];

/** The code where zod takes a sentence. */
export const misfit = (code: Misfit): string => code;
export const isMisfit = (text: string): text is Misfit => (misfits as readonly string[]).includes(text);
