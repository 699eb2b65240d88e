import { joined } from './bytes.ts';

/** The stream ended early: packed data that is damaged or cut off, or more of it than allowed. */
export class LogCutShort extends Error {
  readonly reason: 'damaged' | 'tooLarge';
  constructor(reason: 'damaged' | 'tooLarge') {
    super(reason === 'damaged' ? 'The packed log is damaged or cut off.' : 'The log is larger than allowed.');
    this.reason = reason;
  }
}

/** Most bytes read out of one log, unpacked: assumed; 1 GiB is weeks of a talkative device. */
export const defaultMaxLogBytes = 1_073_741_824;

/**
 * Hands on a log's bytes, unpacked where they begin as gzip does (RFC 1952, 2.3.1: 1f 8b).
 *
 * @param chunks the file's bytes in order
 * @param maxBytes most bytes handed on, counted after unpacking: the guard against files that unpack without end
 * @throws LogCutShort after the last good bytes; errors of `chunks` itself pass through
 */
export async function* unpacked(
  chunks: AsyncIterable<Uint8Array>,
  maxBytes: number = defaultMaxLogBytes,
): AsyncGenerator<Uint8Array, void, undefined> {
  const source = chunks[Symbol.asyncIterator]();
  try {
    const { head, done } = await readHead(source);
    const rest = done ? only(head) : preceded(head, source);
    let total = 0;
    for await (const chunk of head[0] === 0x1f && head[1] === 0x8b ? gunzipped(rest) : rest) {
      total += chunk.length;
      if (total > maxBytes) {
        yield chunk.subarray(0, chunk.length - (total - maxBytes));
        throw new LogCutShort('tooLarge');
      }
      yield chunk;
    }
  } finally {
    await source.return?.();
  }
}

/** A web stream's chunks, for browsers whose streams can't be iterated. Leaving the loop early cancels the stream. */
export async function* chunksOf(stream: {
  getReader(): {
    read(): Promise<{ done: boolean; value?: Uint8Array | undefined }>;
    cancel(): Promise<void>;
  };
}): AsyncGenerator<Uint8Array, void, undefined> {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done || value === undefined) return;
      yield value;
    }
  } finally {
    await reader.cancel();
  }
}

async function* gunzipped(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array, void, undefined> {
  const stream = new DecompressionStream('gzip');
  const writer = stream.writable.getWriter();
  const unpackedChunks = chunksOf(stream.readable);
  let sourceFault: { error: unknown } | null = null;
  const feed = async (): Promise<void> => {
    const source = packed[Symbol.asyncIterator]();
    for (;;) {
      const next = await source.next().catch((error: unknown) => {
        sourceFault = { error };
        throw error;
      });
      if (next.done) return writer.close();
      await writer.write(next.value as Uint8Array<ArrayBuffer>);
    }
  };
  const fed = feed().catch((error: unknown) => writer.abort(error).catch(() => undefined));
  try {
    for (;;) {
      const next = await unpackedChunks.next().catch(() => {
        throw sourceFault === null ? new LogCutShort('damaged') : sourceFault.error;
      });
      if (next.done) break;
      yield next.value;
    }
    await fed;
  } finally {
    await unpackedChunks.return().catch(() => undefined);
  }
}

async function readHead(source: AsyncIterator<Uint8Array>): Promise<{ head: Uint8Array; done: boolean }> {
  let head: Uint8Array = new Uint8Array(0);
  while (head.length < 2) {
    const next = await source.next();
    if (next.done) return { head, done: true };
    head = joined(head, next.value);
  }
  return { head, done: false };
}

async function* only(chunk: Uint8Array): AsyncGenerator<Uint8Array, void, undefined> {
  yield chunk;
}

async function* preceded(
  head: Uint8Array,
  source: AsyncIterator<Uint8Array>,
): AsyncGenerator<Uint8Array, void, undefined> {
  yield head;
  for (;;) {
    const next = await source.next();
    if (next.done) return;
    yield next.value;
  }
}
