import type { FastifyRequest } from 'fastify';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import type { RecognitionRow } from '../../../shared/logs/index.ts';
import { asCaller } from '../../http/as-caller.ts';
import type { Refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { readSettings } from '../organisation/index.ts';

/** The rows of their own that the caller's organisation reads logs by; none for what isn't a log. */
export async function logWordsFor(
  services: Services,
  request: FastifyRequest,
  { kind }: FileEvidenceAbout,
): Promise<{ ok: true; rows: readonly RecognitionRow[] } | Refused> {
  if (kind !== 'log') return { ok: true, rows: [] };
  const settings = await asCaller(services, request, readSettings);
  return 'ok' in settings ? settings : { ok: true, rows: settings.recognition };
}
