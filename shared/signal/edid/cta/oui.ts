import { byteAt } from '../bytes.ts';

/** Makers' blocks begin with three bytes that say whose they are (IEEE registration authority). */
export const ouiLength = 3;
export const hdmiOui = '00-0C-03';
export const hdmiForumOui = 'C4-5D-D8';

const hexBytes = Array.from({ length: 256 }, (_, value) => value.toString(16).toUpperCase().padStart(2, '0'));
const ouiPart = (value: number): string => hexBytes[value] ?? '';

/** The OUI as it is written: the last byte is the most significant. */
export const decodeOui = (payload: Uint8Array): string =>
  `${ouiPart(byteAt(payload, 2))}-${ouiPart(byteAt(payload, 1))}-${ouiPart(byteAt(payload, 0))}`;

export const encodeOui = (oui: string): number[] =>
  oui
    .split('-')
    .map((part) => Number.parseInt(part, 16))
    .reverse();
