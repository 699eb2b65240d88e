/**
 * EDIDs for tests, put together byte by byte from the standards: E-EDID base block, CTA-861-H data blocks, HDMI 1.4b
 * and 2.1 vendor blocks.
 */
export type EdidFacts = {
  /** Written in steps of 5 MHz; above 340 into the HDMI Forum block. */
  maxTmdsMHz: number;
  vics: number[];
  /** Taken in 4:2:0 too; of those above, which are in `vics` as well. */
  vics420: number[];
  ycbcr: boolean;
  deepColour: boolean;
  hdr: boolean;
  /** Code of the highest fixed rate: 0 none, 5 is 40, 6 is 48 Gbit/s. */
  frlCode: number;
  compression: boolean;
  /** Steps of 10 kHz, pixels, lines: the one detailed timing of the base block. */
  detailed: { clock10KHz: number; widthPx: number; blankPx: number; lines: number; blankLines: number };
};

/** A display of 18 Gbit/s with deep colour, HDR and the usual 2160p and 1080p codes. */
export const display18: EdidFacts = {
  maxTmdsMHz: 600,
  vics: [97, 96, 95, 94, 93, 102, 101, 16, 31, 32, 63, 4, 19],
  vics420: [97, 96, 102, 101],
  ycbcr: true,
  deepColour: true,
  hdr: true,
  frlCode: 0,
  compression: false,
  detailed: { clock10KHz: 59400, widthPx: 3840, blankPx: 560, lines: 2160, blankLines: 90 },
};

/** One of 48 Gbit/s that also takes 2160p120, 4320p and compressed video. */
export const display48: EdidFacts = {
  ...display18,
  vics: [...display18.vics, 118, 194, 198, 199],
  vics420: [...display18.vics420, 118, 198, 199],
  frlCode: 6,
  compression: true,
};

export function edidHex(facts: EdidFacts): string {
  const bytes = [...baseBlock(facts), ...ctaBlock(facts)];
  return bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const checksummed = (bytes: number[]): number[] => {
  const block = [...bytes, ...Array<number>(127 - bytes.length).fill(0)];
  const sum = block.reduce((total, byte) => total + byte, 0);
  return [...block, (256 - (sum % 256)) % 256];
};

function baseBlock({ detailed }: EdidFacts): number[] {
  const identity = [0, 255, 255, 255, 255, 255, 255, 0, 0x68, 0x21, 1, 0, 0, 0, 0, 0, 1, 34, 1, 4];
  const features = [0xb5, 60, 34, 120, 6];
  const colours = [0xee, 0x91, 0xa3, 0x54, 0x4c, 0x99, 0x26, 0x0f, 0x50, 0x54];
  const timings = [0, 0, 0, ...Array<number>(16).fill(1)];
  const unused = [0, 0, 0, 0x10, 0, ...Array<number>(13).fill(0)];
  return checksummed([
    ...identity,
    ...features,
    ...colours,
    ...timings,
    ...detailedTiming(detailed),
    ...unused,
    ...unused,
    ...unused,
    1,
  ]);
}

function detailedTiming({
  clock10KHz,
  widthPx,
  blankPx,
  lines,
  blankLines,
}: EdidFacts['detailed']): number[] {
  const both = (high: number, low: number): number => (high >> 8) * 16 + (low >> 8);
  return [
    clock10KHz & 255,
    clock10KHz >> 8,
    widthPx & 255,
    blankPx & 255,
    both(widthPx, blankPx),
    lines & 255,
    blankLines & 255,
    both(lines, blankLines),
    48,
    32,
    0x35,
    0,
    0,
    0,
    0,
    0,
    0,
    0x1e,
  ];
}

const block = (tag: number, payload: number[]): number[] => [tag * 32 + payload.length, ...payload];
const extended = (tag: number, payload: number[]): number[] => block(7, [tag, ...payload]);

function ctaBlock(facts: EdidFacts): number[] {
  const deep = facts.deepColour ? 0x38 : 0;
  const hdmi = [0x03, 0x0c, 0x00, 0x10, 0x00, deep, Math.min(facts.maxTmdsMHz, 340) / 5];
  const only420 = facts.vics420.filter((vic) => !facts.vics.includes(vic));
  const map = facts.vics.map((vic) => facts.vics420.includes(vic));
  const blocks = [
    ...block(2, facts.vics),
    ...block(3, hdmi),
    ...(facts.maxTmdsMHz > 340 || facts.frlCode > 0 ? block(3, forum(facts)) : []),
    ...(only420.length > 0 ? extended(0x0e, only420) : []),
    ...(map.includes(true) ? extended(0x0f, bits(map)) : []),
    ...(facts.hdr ? extended(0x06, [0x05, 0x01]) : []),
  ];
  return checksummed([2, 3, 4 + blocks.length, facts.ycbcr ? 0x30 : 0, ...blocks]);
}

function forum({ maxTmdsMHz, frlCode, deepColour, compression }: EdidFacts): number[] {
  const start = [0xd8, 0x5d, 0xc4, 1, maxTmdsMHz / 5, 0x80, frlCode * 16 + (deepColour ? 3 : 0)];
  // DSC 1.2a with 10 and 12 bits, native 4:2:0, 8 slices at 400 MHz, lines of 16 KiB.
  return compression ? [...start, 0, 0, 0, 0xc3, frlCode * 16 + 5, 15] : start;
}

const bits = (flags: boolean[]): number[] =>
  Array.from({ length: Math.ceil(flags.length / 8) }, (_, byte) =>
    flags.slice(byte * 8, byte * 8 + 8).reduce((value, flag, at) => value + (flag ? 1 << at : 0), 0),
  );
