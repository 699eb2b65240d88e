import { bit, flagByte } from '../bytes.ts';

export type DigitalInterface = 'undefined' | 'DVI' | 'HDMI-a' | 'HDMI-b' | 'MDDI' | 'DisplayPort';

/** Byte 20 (E-EDID A.2 section 3.6.1, table 3.11). Before EDID 1.4 a digital input said only whether it is DFP 1.x. */
export type VideoInput =
  | {
      kind: 'analog';
      /** Bits 6 and 5: white over sync, 0 is 0.700/0.300 V. */
      signalLevelCode: number;
      blankToBlack: boolean;
      separateSync: boolean;
      compositeSync: boolean;
      syncOnGreen: boolean;
      serrations: boolean;
    }
  | { kind: 'digital'; bitsPerColour: number | null; interface: DigitalInterface }
  | { kind: 'digitalBefore14'; dfp1Compatible: boolean };

const interfaces: readonly DigitalInterface[] = [
  'undefined',
  'DVI',
  'HDMI-a',
  'HDMI-b',
  'MDDI',
  'DisplayPort',
];

export function decodeVideoInput(value: number, revision: number): VideoInput {
  if (!bit(value, 7)) {
    return {
      kind: 'analog',
      signalLevelCode: (value >> 5) & 3,
      blankToBlack: bit(value, 4),
      separateSync: bit(value, 3),
      compositeSync: bit(value, 2),
      syncOnGreen: bit(value, 1),
      serrations: bit(value, 0),
    };
  }
  if (revision < 4) return { kind: 'digitalBefore14', dfp1Compatible: bit(value, 0) };
  const depth = (value >> 4) & 7;
  return {
    kind: 'digital',
    bitsPerColour: depth >= 1 && depth <= 6 ? depth * 2 + 4 : null,
    interface: interfaces[value & 15] ?? 'undefined',
  };
}

export function encodeVideoInput(input: VideoInput): number {
  switch (input.kind) {
    case 'analog':
      return (
        input.signalLevelCode * 32 +
        flagByte(
          input.blankToBlack,
          input.separateSync,
          input.compositeSync,
          input.syncOnGreen,
          input.serrations,
        )
      );
    case 'digital':
      return (
        128 +
        (input.bitsPerColour === null ? 0 : (input.bitsPerColour / 2 - 2) * 16) +
        interfaces.indexOf(input.interface)
      );
    case 'digitalBefore14':
      return input.dfp1Compatible ? 129 : 128;
  }
}
