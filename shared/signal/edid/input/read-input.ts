import { type Message, message } from '../../../message/index.ts';
import { edidHeader, startsWithHeader } from '../base/base-block.ts';
import { blockSize, indexOfBytes } from '../bytes.ts';
import { bytesFromBase64 } from './base64-text.ts';
import { bytesFromText } from './hex-text.ts';

/**
 * What a file or a pasted text turned out to hold. `notes` say what was skipped or turned around. `otherText`: a text
 * without a trace of an EDID, whose own bytes are given.
 */
export type EdidInput = {
  form: 'binary' | 'hexText' | 'base64' | 'otherText';
  bytes: Uint8Array;
  notes: Message[];
};

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
 * Finds the EDID in the content of a file: binary, a hex dump in a text (`bytesFromText`), or base64 (RFC 4648). Never
 * throws; content without a trace of an EDID comes back as it is, for `decodeEdid` to say what is wrong with it.
 */
export function readEdidInput(content: Uint8Array): EdidInput {
  if (startsWithHeader(content)) return { form: 'binary', bytes: content, notes: [] };
  const text = textOf(content);
  if (text === null) return fromBinary(content);
  return fromText(text) ?? { form: 'otherText', bytes: content, notes: [] };
}

function fromText(text: string): EdidInput | null {
  const decoded = bytesFromBase64(text);
  if (decoded) return { form: 'base64', bytes: decoded, notes: [] };
  const dump = bytesFromText(text);
  return dump && { form: 'hexText', ...dump };
}

/** The same for a text that was pasted; without an EDID in it, `bytes` is empty. */
export const readEdidText = (text: string): EdidInput =>
  fromText(text) ?? { form: 'otherText', bytes: new Uint8Array(), notes: [] };
