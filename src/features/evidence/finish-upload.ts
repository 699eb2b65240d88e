import type { FastifyRequest } from 'fastify';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { asCaller } from '../../http/as-caller.ts';
import { found, type Outcome, type Refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { evidenceItemOf, findEvidence } from '../evidence-record/index.ts';
import { readAbout, readFileName } from './about-file.ts';
import { addFile } from './add-evidence.ts';
import { logWordsFor } from './log-words.ts';
import { discardPrepared, prepareFile } from './prepare-file.ts';
import type { UploadStore } from './upload-store.ts';

type Finisher = { readonly services: Services; readonly uploads: UploadStore };
export type Finish = (request: FastifyRequest, id: string) => Promise<Outcome<EvidenceItem>>;

/**
 * Makes evidence of whole uploads, of each once: the evidence has the upload's id, so that a second try after a
 * crash, or a phone that asks again because it missed the reply, finds what the first one made. A refusal leaves the
 * bytes where they are: whoever asks again, once the ticket is open again or has the change, gets their evidence.
 */
export function finisherOf(services: Services, uploads: UploadStore): Finish {
  const running = new Map<string, Promise<Outcome<EvidenceItem>>>();
  return (request, id) => {
    const begun =
      running.get(id) ?? finish({ services, uploads }, request, id).finally(() => running.delete(id));
    running.set(id, begun);
    return begun;
  };
}

async function finish(
  finisher: Finisher,
  request: FastifyRequest,
  id: string,
): Promise<Outcome<EvidenceItem>> {
  const { services, uploads } = finisher;
  const made = await asCaller(services, request, async (context) => {
    const row = await findEvidence(context, id);
    return row === null ? null : found(evidenceItemOf(row));
  });
  if (made !== null && !made.ok) return made;
  const outcome = made ?? (await makeEvidence(finisher, request, id));
  if (outcome.ok) await uploads.noteFinished(id, id);
  return outcome;
}

async function makeEvidence(
  { services, uploads }: Finisher,
  request: FastifyRequest,
  id: string,
): Promise<Outcome<EvidenceItem>> {
  const { evidenceStore, heavyWork } = services;
  const notes = await uploads.notesOf(id);
  if (notes === null) throw new Error('an upload without notes cannot be finished');
  const read = readAbout(notes.about, 'Upload-Metadata/about');
  if (!read.ok) return read;
  const words = await logWordsFor(services, request, read.about);
  if (!words.ok) return words;
  const file = await evidenceStore.inspect(uploads.pathOf(id));
  // Goes on where the phone is gone: it will ask what came of the upload.
  const asked = { orgId: request.user.org, memberId: request.user.sub };
  const reader = { heavyWork, asked, rows: words.rows };
  const prepared = await prepareFile(evidenceStore, file, { ...reader, about: read.about });
  if (!prepared.ok) return prepared;
  const fileName = readFileName(notes.filename);
  const evidence = { id, ticketId: notes.ticketId, about: read.about, fileName, prepared };
  try {
    const outcome: Outcome<EvidenceItem> | Refused = await asCaller(services, request, (context) =>
      addFile(context, evidence),
    );
    if (outcome.ok) await evidenceStore.discard(file);
    return outcome;
  } finally {
    // The upload itself stays until its evidence is there: whoever asks again after a failure finds it.
    if (prepared.main.path !== file.path) await discardPrepared(evidenceStore, prepared);
  }
}
