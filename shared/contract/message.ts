import { z } from 'zod';

/**
 * Something the program says: a code of shared/message and its values. `text` is the sentence in the language that was
 * asked for; it is added when a reply leaves the server, and is in nothing that is stored.
 */
export const message = z.object({
  code: z.string(),
  values: z.record(z.string(), z.unknown()),
  text: z.string().optional(),
});
export type Message = z.infer<typeof message>;
