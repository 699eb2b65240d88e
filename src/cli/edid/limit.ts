import { type EdidLimits, limitEdid } from '../../../shared/signal/edid/index.ts';
import { type Command, type Given, UsageError } from '../program/program.ts';
import { readWholeEdid } from './read-edid.ts';
import { writeEdid, writeOptions } from './write-edid.ts';

const rate = (given: Given, option: string): number | null => {
  const text = given.valueOf(option);
  if (text === null) return null;
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value) || value < 0)
    throw new UsageError(`--${option} takes a number, not ${text}.`);
  return value;
};

/** Slowest of all: what 640 by 480 needs at 60 Hz (CTA-861-H table 1, VIC 1). */
const leastTmdsMHz = 25.2;

function limitsOf(given: Given): EdidLimits {
  const tmdsMHz = rate(given, 'max-tmds');
  if (tmdsMHz !== null && tmdsMHz < leastTmdsMHz)
    throw new UsageError(`Every sink takes ${leastTmdsMHz} MHz: --max-tmds can't be less.`);
  const frlGbps = given.isOn('no-frl') ? 0 : rate(given, 'max-frl');
  return {
    ...(tmdsMHz !== null && { maxTmdsCharacterRateMHz: tmdsMHz }),
    ...(frlGbps !== null && { maxFrlGbps: frlGbps }),
    drop420: given.isOn('no-420'),
    dropHdr: given.isOn('no-hdr'),
    dropVrr: given.isOn('no-vrr'),
    dropCompression: given.isOn('no-compression'),
    stereoOnly: given.isOn('stereo'),
  };
}

export const limit: Command = {
  name: 'limit',
  operands: 'FILE',
  summary: 'An EDID that admits less than the one given.',
  more: 'For an EDID emulator or a switch: --max-tmds 300 is a link of 9 Gbit/s, --max-tmds 600 --no-frl one of 18.',
  options: {
    'max-tmds': { value: 'MHZ', help: 'highest TMDS character rate; below 600, no fixed rate link' },
    'max-frl': {
      value: 'GBPS',
      help: 'highest fixed rate link: 9, 18, 24, 32, 40, 48 Gbit/s; what lies between, the next below',
    },
    'no-frl': { help: 'no fixed rate link' },
    'no-compression': { help: 'no display stream compression' },
    'no-420': { help: 'no YCbCr 4:2:0' },
    'no-hdr': { help: 'neither static nor dynamic HDR, nor the makers’ own' },
    'no-vrr': { help: 'no variable refresh rate' },
    stereo: { help: 'sound in two channels of PCM' },
    ...writeOptions,
  },
  async run(given) {
    const limits = limitsOf(given);
    if (!Object.values(limits).some((value) => value !== false)) throw new UsageError('No limit was given.');
    const edid = await readWholeEdid(given.operands[0] ?? '');
    return edid === null ? 1 : writeEdid(limitEdid(edid, limits), given);
  },
};
