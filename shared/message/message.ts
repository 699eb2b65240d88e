import type { Message } from '../contract/message.ts';
import type { Code, Codes } from './sentences.ts';
import type { ValuesOf } from './values.ts';

export type { Message } from '../contract/message.ts';
export type { Code } from './sentences.ts';

/** A message of one code. What comes out is plain JSON. */
export const message = <Of extends Code>(
  code: Of,
  ...[values]: keyof Codes[Of] extends never ? [] : [ValuesOf<Codes[Of]>]
): Message & { code: Of } => ({ code, values: (values ?? {}) as Message['values'] });
