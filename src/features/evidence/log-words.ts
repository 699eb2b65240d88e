import type { FastifyRequest } from 'fastify';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { compileRecognition, type Recognition } from '../../../shared/logs/index.ts';
import { asCaller } from '../../http/as-caller.ts';
import type { Refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { readSettings } from '../organisation/index.ts';

/** The words that the caller's organisation reads logs by; null for what isn't a log. */
export async function logWordsFor(
  services: Services,
  request: FastifyRequest,
  { kind }: FileEvidenceAbout,
): Promise<{ ok: true; recognition: Recognition | null } | Refused> {
  if (kind !== 'log') return { ok: true, recognition: null };
  const settings = await asCaller(services, request, readSettings);
  if ('ok' in settings) return settings;
  const compiled = compileRecognition(settings.recognition);
  // Rows are tried before they are kept; should the built-in table have changed since, it is read by that alone.
  return { ok: true, recognition: compiled.ok ? compiled.recognition : null };
}
