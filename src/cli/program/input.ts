import { createReadStream } from 'node:fs';

export type Input = { ok: true; content: Uint8Array } | { ok: false; reason: string };

/** Why a file can't be read, in the words people know for it; anything rarer in the system's own. */
const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'this is a folder',
  EACCES: 'it may not be read',
};

/**
 * The content of a file, or of the standard input for `-`. Stops reading at `mostBytes`, so that a disk image or an
 * endless pipe costs no memory. Never throws.
 */
export async function readInput(file: string, mostBytes: number): Promise<Input> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const chunk of file === '-' ? process.stdin : createReadStream(file)) {
      chunks.push(chunk as Uint8Array);
      length += (chunk as Uint8Array).length;
      if (length > mostBytes)
        return { ok: false, reason: `it is longer than ${mostBytes / 1024} KiB, the most that is read` };
    }
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    return { ok: false, reason: reasons[code ?? ''] ?? message };
  }
  return { ok: true, content: Buffer.concat(chunks) };
}
