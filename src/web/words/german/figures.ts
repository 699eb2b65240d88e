/** Figures as the sentences of shared code write them, and how German writes them. */

export const numberPattern = '−?\\d+(?:\\.\\d+)?';
export const minutesPattern = '\\d+(?:\\.\\d+)? (?:min|h)(?: \\d+ min)?';
export const percentPattern = '(?:less than |more than )?\\d+(?:\\.\\d+)? %';
export const timesPattern = '(?:[Oo]nce|\\d+ times)';

/** `1.5` → `1,5`; also inside `1.5 min` and `94 %`. */
export const germanNumber = (text: string): string => text.replace('.', ',');

/** `less than 0.1 %` → `weniger als 0,1 %`. */
export const germanPercent = (text: string): string =>
  germanNumber(text).replace('less than', 'weniger als').replace('more than', 'mehr als');

/** `once` → `einmal`, `3 times` → `3-mal`. */
export const germanTimes = (text: string): string =>
  /^once$/i.test(text) ? 'einmal' : text.replace(' times', '-mal');

/** A picture format: `3840×2160p59.94 RGB 8 bit` → `3840×2160p59,94 RGB 8 Bit`. */
export const formatPattern = '\\d+×\\d+[ip]\\d+(?:\\.\\d+)? (?:RGB|4:[24]:[024]) \\d+ bit';
export const germanFormat = (text: string): string => germanNumber(text).replace(/bit$/, 'Bit');

/** A mode of a port: `TMDS 74.25 MHz (2.23 Gbit/s)`, `FRL 4 × 12 Gbit/s (48 Gbit/s)`. */
export const modePattern = '(?:TMDS [\\d.]+ MHz|FRL \\d+ × [\\d.]+ Gbit/s) \\([\\d.]+ Gbit/s\\)';
export const germanMode = (text: string): string => text.replaceAll('.', ',');
