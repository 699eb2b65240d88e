import { z } from 'zod';
import { quotaNames } from './quota-names.ts';

/** What an organisation uses now, and the most that the server lets it. */
export const usage = z.object({ quota: z.enum(quotaNames), used: z.int(), most: z.int() });
export type Usage = z.infer<typeof usage>;
