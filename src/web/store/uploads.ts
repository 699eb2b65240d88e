import { DetailedError, Upload } from 'tus-js-client';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { message } from '../../../shared/message/index.ts';
import { accessToken, reportReachable } from '../api/session.ts';
import { memberDatabase } from './member-database.ts';
import { changeEntry } from './outbox.ts';
import type { UploadEntry } from './outbox-entry.ts';
import { answerTo, problemIn } from './upload-answer.ts';

type UploadResult =
  | { kind: 'ok' }
  | { kind: 'refused'; problem: Problem }
  | { kind: 'unreachable'; gotFurther: boolean };

/** Bytes a request; assumed: what a weak connection gets through before it breaks. */
const chunkBytes = 512 * 1024;

/** Uploads a kept file (tus 1.0), from where it stopped the last time. Never throws. */
export async function uploadEntry(entry: UploadEntry): Promise<UploadResult> {
  const file = await (await memberDatabase())?.get('files', entry.id);
  if (file === undefined) return { kind: 'refused', problem: lostFile };
  if ((await accessToken()) === null) return { kind: 'unreachable', gotFurther: false };
  return new Promise((resolve) => {
    let shownAt = 0;
    let gotFurther = false;
    const upload = new Upload(file, {
      endpoint: addresses.uploads,
      uploadUrl: entry.uploadUrl,
      chunkSize: chunkBytes,
      // Waiting and repeating is the outbox's work.
      retryDelays: null,
      storeFingerprintForResuming: false,
      metadata: {
        ticketId: entry.ticketId,
        about: JSON.stringify(entry.about),
        filename: entry.fileName,
      },
      onBeforeRequest: async (request) => {
        request.setHeader('Authorization', `Bearer ${(await accessToken()) ?? ''}`);
      },
      onUploadUrlAvailable: () => void changeEntry(entry.order, { uploadUrl: upload.url }),
      onChunkComplete: (_size, sentBytes) => {
        gotFurther = true;
        if (sentBytes - shownAt < chunkBytes && sentBytes !== entry.sizeBytes) return;
        shownAt = sentBytes;
        void changeEntry(entry.order, { sentBytes });
      },
      onSuccess: () => {
        reportReachable(true);
        resolve({ kind: 'ok' });
      },
      onError: (error) => resolve(resultOf(error, gotFurther)),
    });
    void changeEntry(entry.order, { state: 'sending' }).then(() => upload.start());
  });
}

function resultOf(error: Error | DetailedError, gotFurther: boolean): UploadResult {
  const reply = error instanceof DetailedError ? error.originalResponse : null;
  const status = reply?.getStatus() ?? 0;
  reportReachable(status !== 0);
  return answerTo(status, reply?.getBody() ?? '') === 'comesAgain'
    ? { kind: 'unreachable', gotFurther }
    : { kind: 'refused', problem: problemIn(reply?.getBody() ?? '') ?? unnamed(status, error.message) };
}

const unnamed = (status: number, reason: string): Problem => ({
  type: 'about:blank',
  status,
  said: message('uploadRefused', { reason }),
});

const lostFile: Problem = {
  type: 'about:blank',
  status: 410,
  said: message('fileLostFromDevice'),
};
