import type { SinkFormat } from '../../../shared/signal/edid/index.ts';

/*
 * Which formats the bytes of an EDID state, read a second time and by other means than the decoder: by looking for them
 * where the standards have them, block by block, and never past the end of a block.
 */

const detailedKey = (clockKHz: number, widthPx: number, lines: number) =>
  `detailed ${clockKHz} ${widthPx} ${lines}`;

/** What a decoded format has to be found by. */
export function keyOf({ source, timing }: SinkFormat): string {
  switch (source.kind) {
    case 'vic':
      return `vic ${source.vic}`;
    case 'hdmiVic':
      return `hdmiVic ${source.hdmiVic}`;
    case 'rid':
      return `rid ${source.rid}`;
    case 'detailed':
      return detailedKey(timing.pixelClockKHz, timing.widthPx, timing.heightPx / (timing.interlaced ? 2 : 1));
    case 'displayId':
      return 'displayId';
    case 'bySize':
      return 'bySize';
  }
}

/** The keys of all that is stated. */
export function statedIn(bytes: Uint8Array): Set<string> {
  const keys = new Set<string>();
  for (let at = 0; at < bytes.length; at += 128) {
    const block = new Uint8Array(128);
    block.set(bytes.subarray(at, at + 128));
    if (at === 0) baseBlock(block, keys);
    else if (block[0] === 0x02) ctaBlock(block, keys);
    else if (block[0] === 0x70) displayIdBlock(block, keys);
  }
  return keys;
}

function baseBlock(block: Uint8Array, keys: Set<string>): void {
  if ([35, 36, 37].some((at) => block[at])) keys.add('bySize');
  for (let at = 38; at < 54; at += 2) if (block[at] !== 1 || block[at + 1] !== 1) keys.add('bySize');
  for (const at of [54, 72, 90, 108]) slot(block, at, keys);
}

/** E-EDID A.2 section 3.10: a timing has a clock, a display descriptor a tag. */
function slot(block: Uint8Array, at: number, keys: Set<string>): void {
  const byte = (index: number): number => block[at + index] ?? 0;
  const clock = byte(0) + byte(1) * 256;
  if (clock === 0) {
    if ([0xf7, 0xf8, 0xfa].includes(byte(3))) keys.add('bySize');
    return;
  }
  const widthPx = byte(2) + (byte(4) >> 4) * 256;
  const lines = byte(5) + (byte(7) >> 4) * 256;
  keys.add(detailedKey(clock * 10, widthPx, lines));
}

function ctaBlock(block: Uint8Array, keys: Set<string>): void {
  const [, revision = 0, slots = 0] = block;
  if (revision === 0 || slots < 4) return;
  if (revision >= 3) dataBlocks(block.subarray(4, 127), Math.min(slots, 127) - 4, keys);
  for (let at = slots; at + 18 <= 127; at += 18) slot(block, at, keys);
}

/** CTA-861 section 7.4: tag and length in one byte; blocks begin before `end`, and none reaches past `bytes`. */
function dataBlocks(bytes: Uint8Array, end: number, keys: Set<string>): void {
  for (let at = 0; at < end; ) {
    const head = bytes[at] ?? 0;
    const payload = bytes.subarray(at + 1, at + 1 + (head & 31));
    dataBlock(head >> 5, payload, keys);
    at += 1 + (head & 31);
  }
}

function dataBlock(tag: number, payload: Uint8Array, keys: Set<string>): void {
  const state = (kind: string, values: Iterable<number>): void => {
    for (const value of values) keys.add(`${kind} ${value}`);
  };
  const [extended = 0] = payload;
  const content = payload.subarray(1);
  if (tag === 2) state('vic', [...payload].map(vicOf));
  if (tag === 6)
    state(
      'rid',
      [...content].map((value) => value & 63),
    );
  if (tag === 3 && extended === 0x03 && content[0] === 0x0c && content[1] === 0)
    state('hdmiVic', payload.subarray(8));
  if (tag !== 7) return;
  if (extended === 14) state('vic', [...content].map(vicOf));
  if ([0x22, 0x23, 0x2a].includes(extended) && content.length > 1) keys.add('displayId');
}

const vicOf = (value: number): number => (value > 128 && value < 193 ? value - 128 : value);

const timingTags = [0x03, 0x04, 0x05, 0x06, 0x07, 0x08, 0x11, 0x13, 0x22, 0x23, 0x24, 0x2a];

function displayIdBlock(block: Uint8Array, keys: Set<string>): void {
  const end = Math.min(5 + (block[2] ?? 0), 126);
  for (let at = 5; at + 3 <= end; ) {
    const [tag = 0, , length = 0] = block.subarray(at);
    const payload = block.subarray(at + 3, Math.min(at + 3 + length, end));
    if (timingTags.includes(tag) && payload.length > 0) keys.add('displayId');
    if (tag === 0x81) dataBlocks(payload, payload.length, keys);
    at += 3 + length;
  }
}
