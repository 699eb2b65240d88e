import { type Message, message } from '../message/index.ts';

/**
 * What a firmware text says, as far as it can be ordered. Makers write as they like and publish no grammar: the
 * rules here are common practice, no source.
 */
export type FirmwareReading = {
  scheme: FirmwareScheme;
  /** The numbers and letters in order. They differ only for a date such as 01.03.2025, which may be read both ways. */
  dayFirst: FirmwarePart[];
  monthFirst: FirmwarePart[];
  /** Words that name a part or an edition (`maincpu`, `eu`): texts are comparable only where these agree. */
  edition: string;
  /** A source-control hash, which has no order. */
  hash: string;
  /** What is said in brackets or after `build`; decides only where all else is equal. */
  build: FirmwareReading | null;
};
export type UnreadableFirmware = { scheme: null; reason: Message };

/** `buildNumber`: one number of five digits or more, alone; it says nothing of the version. */
export type FirmwareScheme = 'version' | 'date' | 'buildNumber' | 'hexadecimal';
/** `early`: an unfinished release (beta, release candidate); `patch`: a correction of what stands before it. */
export type FirmwarePart =
  /** `digits` as they were written, zeros in front included. */
  | { kind: 'number'; value: bigint; digits: string }
  | { kind: 'letter'; value: string }
  | { kind: 'early'; value: bigint }
  | { kind: 'patch' };

// Words in front of a number that say only "a number follows"; after the first group no date can follow.
const versionWords = 'version|vers|ver|v|release|rel|revision|rev|r';
const otherWords = 'firmware|fw|software|sw|build|bld|date|dated|no|nr';
const marker = new RegExp(`(?:^|[^a-z])(?:(${versionWords})|${otherWords})[\\s.:#=_-]*(?=\\d)`);
// After something that begins with a digit itself, such as `4K v1.5`, only a plain version word starts the version.
const lateMarker = /[a-z][^a-z0-9]+(?:version|vers|ver|v|firmware|fw)[\s.:#=_-]*(?=\d+\.\d)/;
const phrases = 'final|stable|ga|min|minimum|at|least|or|and|later|newer|higher';
const neutral = new RegExp(`^(?:${versionWords}|${otherWords}|${phrases})$`);
const earlyWords: Record<string, bigint> = {
  dev: 0n,
  test: 0n,
  nightly: 0n,
  snapshot: 0n,
  alpha: 1n,
  beta: 2n,
  pre: 3n,
  preview: 3n,
  rc: 4n,
};
const patchWords = /^(?:patch|hotfix|fix|sp|update)$/;
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const monthWord = `(${months.join('|')})[a-z]*`;
const number = (digits: string): FirmwarePart => ({ kind: 'number', value: BigInt(digits), digits });

/** Reads one firmware text as shown by a device or typed by a person; never throws. */
export function readFirmware(text: string): FirmwareReading | UnreadableFirmware {
  const plain = normaliseFirmware(text);
  if (plain === '') return { scheme: null, reason: message('firmwareEmpty') };
  const outside = plain.replaceAll(/[([{][^)\]}]*[)\]}]/g, ' ').trim();
  const inside = [...plain.matchAll(/[([{]([^)\]}]*)[)\]}]/g)].map((found) => found[1] ?? '').join(' ');
  // A text that is all brackets is read as if it had none.
  return /\d/.test(outside) ? readParts(outside, inside) : readParts(inside || outside, '');
}

/** The same text in one spelling: small letters, plain digits and dashes, single spaces. */
export function normaliseFirmware(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\u2010-\u2015\u2212]/g, '-')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

function readParts(text: string, bracketed: string): FirmwareReading | UnreadableFirmware {
  const { rest, hash } = withoutHash(withMonthNumbers(withDecimalPoint(text)));
  const inBrackets = withoutHash(` ${withMonthNumbers(bracketed)}`);
  const { main, build } = splitBuild(rest);
  if (!/\d/.test(main)) return { scheme: null, reason: message('firmwareWithoutNumber') };
  if (namesSeveral(main)) return { scheme: null, reason: message('firmwareOfSeveralVersions') };
  const { label, body, mayBeDate, isBuild } = splitLabel(main);
  const read = hexadecimal(body) ?? (mayBeDate ? twoWayDate(body) : null) ?? sequence(body);
  const brackets = readBracket(inBrackets.rest);
  const editions = [...label, ...read.editions, ...brackets.editions];
  return {
    scheme: isBuild && read.scheme === 'version' && read.dayFirst.length < 2 ? 'buildNumber' : read.scheme,
    dayFirst: [...read.dayFirst, ...brackets.parts],
    monthFirst: [...read.monthFirst, ...brackets.parts],
    edition: editions.sort().join(' '),
    hash: hash || inBrackets.hash,
    build: readBuild([build, brackets.build].filter((each) => each !== '').join(' ')),
  };
}

function readBuild(text: string): FirmwareReading | null {
  if (!/\d/.test(text)) return null;
  const { label, body } = splitLabel(text);
  const read = twoWayDate(body) ?? sequence(body);
  const scheme = read.scheme === 'date' ? 'date' : 'buildNumber';
  return { ...read, scheme, edition: [...label, ...read.editions].sort().join(' '), hash: '', build: null };
}

/** Brackets hold a build (`(45)`, `[build 45]`, `(2025-03-01)`), a stage (`(beta 2)`) or an edition (`(eu)`). */
function readBracket(text: string): { parts: FirmwarePart[]; editions: string[]; build: string } {
  const words: string[] = text.match(/[a-z]+/g) ?? [];
  const staged = words.some((word) => Object.hasOwn(earlyWords, word) || patchWords.test(word));
  const read = sequence(staged || !/\d/.test(text) ? text : '');
  const build = staged || !/\d/.test(text) ? '' : text;
  return { parts: read.dayFirst, editions: read.editions, build };
}

/** `1,02` is written with a comma in some countries. */
function withDecimalPoint(text: string): string {
  return /^\D*\d+,\d+\D*$/.test(text) ? text.replace(',', '.') : text;
}

const dayMonthYear = new RegExp(`\\b(\\d{1,2})[\\s.-]*${monthWord}[\\s.,-]*(\\d{4})\\b`);
const monthDayYear = new RegExp(`\\b${monthWord}[\\s.-]*(\\d{1,2})[\\s.,-]+(\\d{4})\\b`);
const yearMonthDay = new RegExp(`\\b(\\d{4})[\\s.-]*${monthWord}[\\s.-]*(\\d{1,2})\\b`);
const monthYear = new RegExp(`\\b${monthWord}[\\s.,-]+(\\d{4})\\b`);

function withMonthNumbers(text: string): string {
  const iso = (year: string, month: string, day: string): string =>
    `${year}-${String(months.indexOf(month) + 1).padStart(2, '0')}-${day.padStart(2, '0')}`;
  return text
    .replace(dayMonthYear, (_all, day, month, year) => iso(year, month, day))
    .replace(monthDayYear, (_all, month, day, year) => iso(year, month, day))
    .replace(yearMonthDay, (_all, year, month, day) => iso(year, month, day))
    .replace(monthYear, (_all, month, year) => iso(year, month, '00'));
}

function withoutHash(text: string): { rest: string; hash: string } {
  const hash = /[-+._\s]g?((?=(?:[a-f]*\d)+)(?=(?:\d*[a-f]){2})[0-9a-f]{7,40})$/.exec(text);
  return hash === null ? { rest: text, hash: '' } : { rest: text.slice(0, hash.index), hash: hash[1] ?? '' };
}

const dated = '\\d{4}-\\d{1,2}-\\d{1,2}|\\d{14}|\\d{12}|\\d{8}|\\d{1,2}[./]\\d{1,2}[./]\\d{4}';
const buildMarks = [
  /^(.*\d.*?)[\s,_-]*(?:build|bld|#)[\s.:#=_-]*(?:no|nr)?[\s.:#=_-]*(\d.*)$/,
  /^(.*\d.*?)\+(\d[\d.]*)$/,
  new RegExp(`^(.*\\d\\.\\d.*?)[\\s,_-]+(${dated})$`),
];

function splitBuild(text: string): { main: string; build: string } {
  for (const mark of buildMarks) {
    const [, main, build] = mark.exec(text) ?? [];
    if (main !== undefined && build !== undefined) return { main, build };
  }
  return { main: text, build: '' };
}

function namesSeveral(text: string): boolean {
  const dotted = text.split(/[\s;|,/]+/).filter((piece) => /\d\.\d/.test(piece));
  const listed = text.split(/[;|]|\s\/\s|\/(?=[a-z])/).filter((piece) => /\d/.test(piece));
  return dotted.length > 1 || listed.length > 1;
}

/** Parts what stands in front of the first number of the version from the version itself. */
function splitLabel(text: string): { label: string[]; body: string; mayBeDate: boolean; isBuild: boolean } {
  const marked = markerOf(text);
  const parted = /^[^a-z0-9]*[a-z][^:]*?[\s:=_-]+(?=\d)/.exec(text);
  const at = marked?.at ?? (startsWithDigit(text) ? null : parted?.[0].length) ?? text.search(/\d/);
  const words = text.slice(0, at).match(/[a-z0-9]+/g) ?? [];
  // `Beta 1.8` is `1.8 beta`.
  const stages = words.filter((word) => Object.hasOwn(earlyWords, word));
  return {
    label: words.filter((word) => !neutral.test(word) && !stages.includes(word)),
    body: [text.slice(at), ...stages].join(' '),
    mayBeDate: marked === null || !marked.isVersion,
    isBuild: marked !== null && /^\W*(?:build|bld)\W*$/.test(text.slice(0, at)),
  };
}

const startsWithDigit = (text: string): boolean => /^[^a-z0-9]*\d/.test(text);

/** Where a word such as `v` or `firmware` says that the version begins; null without one, or after a number with a dot. */
function markerOf(text: string): { at: number; isVersion: boolean } | null {
  const late = startsWithDigit(text);
  const found = (late ? lateMarker : marker).exec(text);
  if (found === null || /\d\.\d/.test(text.slice(0, found.index))) return null;
  return { at: found.index + found[0].length, isVersion: late || found[1] !== undefined };
}

type Sequence = Pick<FirmwareReading, 'scheme' | 'dayFirst' | 'monthFirst'> & { editions: string[] };
const bothWays = (scheme: FirmwareScheme, parts: FirmwarePart[], editions: string[]): Sequence => ({
  scheme,
  dayFirst: parts,
  monthFirst: parts,
  editions,
});

function hexadecimal(body: string): Sequence | null {
  return /^0x[0-9a-f]+$/.test(body) ? bothWays('hexadecimal', [number(body)], []) : null;
}

const isYear = (year: number): boolean => year >= 1990 && year <= 2099;
const isMonth = (month: number): boolean => month >= 1 && month <= 12;
const isDay = (day: number): boolean => day >= 1 && day <= 31;

/** A date with the year last: 01.03.2025 is the 1st of March to some and the 3rd of January to others. */
function twoWayDate(body: string): Sequence | null {
  const [all = '', first, , second, year] = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?!\d)/.exec(body) ?? [];
  if (first === undefined || second === undefined || year === undefined || !isYear(+year)) return null;
  const dayFirst = isDay(+first) && isMonth(+second) ? [year, second, first] : null;
  const monthFirst = isMonth(+first) && isDay(+second) ? [year, first, second] : null;
  const one = dayFirst ?? monthFirst;
  const other = monthFirst ?? dayFirst;
  if (one === null || other === null) return null;
  const { parts, editions } = partsOf(body.slice(all.length));
  return {
    scheme: 'date',
    dayFirst: [...one.map(number), ...parts],
    monthFirst: [...other.map(number), ...parts],
    editions,
  };
}

function sequence(body: string): Sequence {
  const { compact, rest } = compactDate(body);
  const { parts, editions } = partsOf(rest);
  const [first = ''] = body.match(/^\d+/) ?? [];
  if (compact !== null) return bothWays('date', [...compact.map(number), ...parts], editions);
  if (first.length === 4 && isYear(+first)) return bothWays('date', parts, editions);
  const alone = /^\d+$/.test(body.trim()) && first.replace(/^0+/, '').length >= 5;
  return bothWays(alone ? 'buildNumber' : 'version', parts, editions);
}

/** A date in one run of digits: YYYYMMDD, and hours, minutes, seconds if they follow. */
function compactDate(body: string): { compact: string[] | null; rest: string } {
  const [all = '', year = '', month = '', day = '', time = ''] =
    /^(\d{4})(\d{2})(\d{2})((?:\d{2}){0,3})(?!\d)/.exec(body) ?? [];
  if (all === '' || !isYear(+year) || !isMonth(+month) || !isDay(+day)) return { compact: null, rest: body };
  return { compact: [year, month, day, ...(time.match(/\d{2}/g) ?? [])], rest: body.slice(all.length) };
}

function partsOf(text: string): { parts: FirmwarePart[]; editions: string[] } {
  const parts: FirmwarePart[] = [];
  const editions: string[] = [];
  // `1.x` asks for any 1.
  for (const piece of text.replace(/(\.[x*])+$/, '').match(/\d+|[a-z]+/g) ?? []) {
    const early = Object.hasOwn(earlyWords, piece) ? earlyWords[piece] : undefined;
    if (/\d/.test(piece)) parts.push(number(piece));
    else if (early !== undefined) parts.push({ kind: 'early', value: early });
    else if (patchWords.test(piece)) parts.push({ kind: 'patch' });
    else if (piece.length === 1) parts.push({ kind: 'letter', value: piece });
    else if (!neutral.test(piece)) editions.push(piece);
  }
  return { parts: withoutIdleZeros(parts), editions };
}

/** 1.8.0 is 1.8, and 1.0rc1 comes before 1.0.0: zeros that end a run of numbers say nothing. */
function withoutIdleZeros(parts: FirmwarePart[]): FirmwarePart[] {
  const kept: FirmwarePart[] = [];
  for (const part of [...parts].reverse()) {
    const idle = part.kind === 'number' && part.value === 0n && kept.at(-1)?.kind !== 'number';
    if (!idle) kept.push(part);
  }
  return kept.reverse();
}
