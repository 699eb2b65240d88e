import { type Message, message } from '../../../message/index.ts';
import { edidHeader } from '../base/base-block.ts';
import { blockSize, indexOfBytes } from '../bytes.ts';
import { bytesFromText } from './hex-text.ts';

/** What a file or a pasted text turned out to hold. `notes` say what was skipped or turned around. */
export type EdidInput = { form: 'binary' | 'hexText'; bytes: Uint8Array; notes: Message[] };

const startsWithHeader = (bytes: Uint8Array): boolean => indexOfBytes(bytes.subarray(0, 8), edidHeader) === 0;

/** The text of a file, or null for binary content. UTF-16 needs its byte order mark. */
function textOf(content: Uint8Array): string | null {
  if (content[0] === 0xff && content[1] === 0xfe) return new TextDecoder('utf-16le').decode(content);
  if (content[0] === 0xfe && content[1] === 0xff) return new TextDecoder('utf-16be').decode(content);
  const controls = content.some(
    (value) => value < 0x20 && !(value >= 0x09 && value <= 0x0d) && value !== 0x1b,
  );
  if (controls || content.length === 0) return null;
  return new TextDecoder('utf-8').decode(content);
}

/** Binary content: from the first header on when that isn't at the front, else as it is. */
function fromBinary(content: Uint8Array): EdidInput {
  const at = indexOfBytes(content, edidHeader);
  if (at > 0 && at + blockSize <= content.length)
    return {
      form: 'binary',
      bytes: content.subarray(at),
      notes: [message('edid/bytesBeforeHeader', { bytes: at })],
    };
  return { form: 'binary', bytes: content, notes: [] };
}

/**
 * Finds the EDID in the content of a file: binary, or a hex dump in a text (`bytesFromText`). Never throws; content
 * without a trace of an EDID comes back as binary, for `decodeEdid` to say what is wrong with it.
 */
export function readEdidInput(content: Uint8Array): EdidInput {
  if (startsWithHeader(content)) return { form: 'binary', bytes: content, notes: [] };
  const text = textOf(content);
  const inText = text === null ? null : bytesFromText(text);
  return inText ? { form: 'hexText', ...inText } : fromBinary(content);
}

/** The same for a text that was pasted; without a dump in it, `bytes` is empty. */
export function readEdidText(text: string): EdidInput {
  return { form: 'hexText', ...(bytesFromText(text) ?? { bytes: new Uint8Array(), notes: [] }) };
}
