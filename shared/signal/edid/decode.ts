import { type Message, message } from '../../message/index.ts';
import { decodeBaseBlock, startsWithHeader } from './base/base-block.ts';
import { blockSize, byteAt, checksumOf } from './bytes.ts';
import { ctaTag, decodeCtaExtension } from './cta/extension.ts';
import { decodeDisplayIdExtension, displayIdSectionValid, displayIdTag } from './displayid/extension.ts';
import { blockMapTag } from './encode.ts';
import { overriddenCount } from './extension-count.ts';
import type { EdidProblem, Report } from './problems.ts';
import type { Edid, ExtensionBlock } from './tree.ts';

/** Most blocks an EDID can have: the base block and 255 extensions (E-EDID A.2 section 2.2.1). */
export const mostBlocks = 256;

export type DecodedEdid = {
  /** Null when there is nothing to read: less than the identity of a base block, or memory all 00h or all FFh. */
  edid: Edid | null;
  /** Blocks that are there, a truncated last one included. */
  blockCount: number;
  /** True when every block is whole and adds up, and every DisplayID section does. */
  checksumsValid: boolean;
  problems: EdidProblem[];
};

/** Fewest bytes from which anything can be said: up to the version. */
const leastLength = 20;

/**
 * Reads an EDID from its bytes, base block first. Never throws: whatever is wrong is in `problems`, and what can be
 * read is read. All blocks present are read, whatever the base block declares. A truncated block is read as if zeros
 * followed. An EDID that is there several times over is read once (`copies`). Takes the first 256 blocks.
 */
export function decodeEdid(bytes: Uint8Array): DecodedEdid {
  const problems: EdidProblem[] = [];
  const blockCount = Math.min(Math.ceil(bytes.length / blockSize), mostBlocks);
  const nothing = nothingToRead(bytes);
  if (nothing) {
    problems.push({ severity: 'error', block: 0, offset: 0, text: nothing });
    return { edid: null, blockCount, checksumsValid: false, problems };
  }
  if (bytes.length > mostBlocks * blockSize)
    problems.push(note(mostBlocks - 1, 127, message('edid/onlyFirstBlocksRead', { blocks: mostBlocks })));
  const copies = copiesIn(bytes);
  if (copies > 1) problems.push(note(0, 0, message('edid/repeatedWhole', { copies })));
  // Parts of the tree keep views of what they were read from: of a copy that nobody else writes to.
  const own = new Uint8Array(bytes.subarray(0, (blockCount / copies) * blockSize));
  const blocks = Array.from({ length: blockCount / copies }, (_, i) => wholeBlock(own, i));
  const valid = blocks.map((block, i) =>
    checkBlock(block, bytes.length - i * blockSize, reportInto(problems, i)),
  );
  const [first = new Uint8Array(blockSize), ...rest] = blocks;
  const base = decodeBaseBlock(first, reportInto(problems, 0));
  const extensions = rest.map((block, i) => decodeExtension(block, reportInto(problems, i + 1)));
  checkCount(first, extensions, problems);
  const edid = { base, extensions, ...(copies > 1 && { copies }) };
  return { edid, blockCount, checksumsValid: valid.every(Boolean), problems };
}

/**
 * How often an EDID stands in `bytes`: more than once where they are nothing but the blocks that the base block declares,
 * over and over, byte for byte. A memory that is larger than its content is read so when its address wraps around.
 */
function copiesIn(bytes: Uint8Array): number {
  const length = (byteAt(bytes, 126) + 1) * blockSize;
  if (bytes.length <= length || bytes.length % length !== 0 || bytes.length > mostBlocks * blockSize)
    return 1;
  if (!startsWithHeader(bytes)) return 1;
  for (let at = length; at < bytes.length; at++) if (bytes[at] !== bytes[at - length]) return 1;
  return bytes.length / length;
}

function nothingToRead(bytes: Uint8Array): Message | null {
  if (bytes.length === 0) return message('edid/noBytes');
  const first = byteAt(bytes, 0);
  if ((first === 0 || first === 255) && bytes.every((value) => value === first))
    return message('edid/emptyMemory', { byte: hex(first) });
  return bytes.length < leastLength ? message('edid/tooFewBytes', { bytes: bytes.length }) : null;
}

const hex = (value: number): string => value.toString(16).padStart(2, '0').toUpperCase();

const note = (block: number, offset: number, text: Message): EdidProblem => ({
  severity: 'note',
  block,
  offset,
  text,
});

const reportInto =
  (problems: EdidProblem[], block: number): Report =>
  (severity, offset, text) => {
    problems.push({ severity, block, offset: Math.min(offset, blockSize - 1), text });
  };

function wholeBlock(bytes: Uint8Array, index: number): Uint8Array {
  const part = bytes.subarray(index * blockSize, (index + 1) * blockSize);
  if (part.length === blockSize) return part;
  const block = new Uint8Array(blockSize);
  block.set(part);
  return block;
}

/** True for a whole block whose checksums are right; `present` is how many bytes there are from its start. */
function checkBlock(block: Uint8Array, present: number, report: Report): boolean {
  if (present < blockSize) {
    report('error', present, message('edid/blockCutOff', { bytes: present, of: blockSize }));
    return false;
  }
  const right = checksumOf(block, 0, blockSize - 1);
  const written = byteAt(block, blockSize - 1);
  if (written !== right) {
    report(
      'error',
      blockSize - 1,
      message('edid/checksumWrong', { written: hex(written), right: hex(right) }),
    );
    return false;
  }
  return byteAt(block, 0) !== displayIdTag || displayIdSectionValid(block);
}

function decodeExtension(bytes: Uint8Array, report: Report): ExtensionBlock {
  const tag = byteAt(bytes, 0);
  switch (tag) {
    case ctaTag:
      return decodeCtaExtension(bytes, report);
    case displayIdTag:
      return decodeDisplayIdExtension(bytes, report);
    case blockMapTag:
      return { kind: 'blockMap', tags: [...bytes.subarray(1, blockSize - 1)] };
    default:
      report('note', 0, message('edid/extensionUnread', { tag: hex(tag) }));
      return { kind: 'other', tag, content: bytes.slice(1, blockSize - 1) };
  }
}

function checkCount(base: Uint8Array, extensions: readonly ExtensionBlock[], problems: EdidProblem[]): void {
  const declared = byteAt(base, 126);
  const override = overriddenCount(extensions);
  const expected = override ?? declared;
  const present = extensions.length;
  if (override !== null && declared !== 1)
    problems.push(note(0, 126, message('edid/overrideWantsOne', { declared })));
  if (expected === present) return;
  const code = override === null ? 'edid/extensionsMiscounted' : 'edid/extensionsMiscountedByOverride';
  problems.push({
    severity: expected > present ? 'error' : 'warning',
    block: 0,
    offset: 126,
    text: message(code, { declared: expected, present }),
  });
}
