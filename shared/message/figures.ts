import type { Kinds } from './values.ts';

// What the languages share in writing figures. Each language brings its decimal mark and its words.

/**
 * Gross bit rate of a mode in Gbit/s. TMDS: three data channels of ten bits a character; FRL: lanes times the rate of
 * a lane. Source: HDMI 1.4b section 5.4 and HDMI 2.1 (both from memory).
 */
export const modeGbps = (mode: Kinds['mode']): number =>
  mode.kind === 'tmds' ? (mode.maxCharacterRateMHz * 30) / 1000 : mode.lanes * mode.gbpsPerLane;

/** A half that floating point holds a trifle too low, as 22.275, counts as one. */
const upward = 1 + 4 * Number.EPSILON;
/** At most so many decimals, and none that are zero. */
export const rounded = (value: number, digits: number): string =>
  String(Number((value * upward).toFixed(digits)));

/** Minutes that were watched: a decimal below ten, whole above. */
export const watched = (minutes: number): string =>
  minutes < 10 ? String(Math.round(minutes * 10) / 10) : String(Math.round(minutes));

/** Minutes still to be watched, rounded up; what arithmetic in floating point adds at the end does not count. */
export const needed = (minutes: number): string =>
  minutes < 10 ? String(Math.ceil(minutes * 10 - 1e-9) / 10) : String(Math.ceil(minutes - 1e-9));

export type PercentWords = { lessThan: string; moreThan: string; decimal: (figure: string) => string };
/** A probability, 0..1, as a percentage that never rounds to a plain 0 or 100. */
export function percentage(probability: number, { lessThan, moreThan, decimal }: PercentWords): string {
  const value = probability * 100;
  if (value > 0 && value < 0.1) return `${lessThan} ${decimal('0.1')} %`;
  if (value < 100 && value > 99.9) return `${moreThan} ${decimal('99.9')} %`;
  const isFine = value < 10 || value > 99;
  return `${decimal(String(isFine ? Math.round(value * 10) / 10 : Math.round(value)))} %`;
}

export const encodingNames: Record<Kinds['format']['encoding'], string> = {
  rgb: 'RGB',
  ycbcr444: '4:4:4',
  ycbcr422: '4:2:2',
  ycbcr420: '4:2:0',
};

/** How a language writes a fraction and the word for bits. */
export type FigureWords = { decimal: (figure: string) => string; bit: string };
export const englishFigures: FigureWords = { decimal: (figure) => figure, bit: 'bit' };

/** A bit rate to a hundredth: `18 Gbit/s`. */
export const bitRate = (rateGbps: number, { decimal }: FigureWords): string =>
  `${decimal(rounded(rateGbps, 2))} Gbit/s`;

/** The standards' names, the same in every language; SDR goes without saying. */
export const dynamicRangeNames: Record<NonNullable<Kinds['format']['dynamicRange']>, string> = {
  sdr: 'SDR',
  hdr10: 'HDR10',
  hlg: 'HLG',
  'st2094-10': 'ST 2094-10',
  'st2094-40': 'ST 2094-40',
};

/** What comes with a picture, as ` HDR10 BT.2020 VRR`. */
function comesWith(
  { dynamicRange, colorimetry, features, threeD, sound }: Kinds['format'],
  { decimal }: FigureWords,
): string {
  const parts = [
    ...(threeD ? ['3D'] : []),
    ...(dynamicRange === undefined || dynamicRange === 'sdr' ? [] : [dynamicRangeNames[dynamicRange]]),
    ...(colorimetry === 'bt2020' ? ['BT.2020'] : []),
    ...(features ?? []).map((feature) => feature.toUpperCase()),
    ...(sound ? [`PCM ${sound.channels} × ${decimal(String(sound.rateKHz))} kHz`] : []),
  ];
  return parts.map((part) => ` ${part}`).join('');
}

/** `3840×2160p60 RGB 8 bit`; the rate to a thousandth, so that 59.94 and 60 stay apart. */
export function formatFigures(format: Kinds['format'], words: FigureWords): string {
  const { decimal, bit } = words;
  const scan = format.interlaced ? 'i' : 'p';
  const rate = decimal(rounded(format.refreshHz, 3));
  return `${format.widthPx}×${format.heightPx}${scan}${rate} ${encodingNames[format.encoding]} ${format.bitsPerComponent} ${bit}${comesWith(format, words)}`;
}

/** `TMDS 600 MHz (18 Gbit/s)`, `FRL 4 × 12 Gbit/s (48 Gbit/s)`. */
export function modeFigures(mode: Kinds['mode'], words: FigureWords): string {
  const how =
    mode.kind === 'tmds'
      ? `TMDS ${words.decimal(String(mode.maxCharacterRateMHz))} MHz`
      : `FRL ${mode.lanes} × ${words.decimal(String(mode.gbpsPerLane))} Gbit/s`;
  return `${how} (${bitRate(modeGbps(mode), words)})`;
}

/** `1 h 20 min`: the same in English and German. */
export function hoursAndMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

const formats = new Map<string, Intl.DateTimeFormat>();
/** A formatter for a zone, made once; for a zone that this machine has not heard of, UTC with its name. */
export function dateFormat(
  locale: string,
  zone: string,
  options: Intl.DateTimeFormatOptions,
): Intl.DateTimeFormat {
  const key = `${locale} ${zone} ${JSON.stringify(options)}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat(locale, { ...options, timeZone: zone });
  } catch {
    format = new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC', timeZoneName: 'short' });
  }
  formats.set(key, format);
  return format;
}
/** Day and time in a zone; UTC is nobody's wall clock, so that it is named. */
export const dayAndTime = (instant: string, locale: string, zone: string): string =>
  dateFormat(
    locale,
    zone,
    zone === 'UTC' ? { ...dayAndTimeOptions, timeZoneName: 'short' } : dayAndTimeOptions,
  ).format(new Date(instant));
const dayAndTimeOptions: Intl.DateTimeFormatOptions = {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
};
