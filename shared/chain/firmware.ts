import { type Message, message } from '../message/index.ts';
import {
  type FirmwarePart,
  type FirmwareReading,
  normaliseFirmware,
  readFirmware,
} from './firmware-reading.ts';

export type Order = -1 | 0 | 1;
/** `order` is null, with the reason, where the two texts can't be compared. */
export type FirmwareComparison = { order: Order; reason: null } | { order: null; reason: Message };

/**
 * -1 when firmware `a` is older than `b`, 0 when it is the same, 1 when it is newer, null when that can't be told.
 *
 * Numbers count as numbers (3.0 < 3.10), more of them are newer (1.8 < 1.8.1, and 1.8 = 1.8.0), a letter
 * is newer than none and older than a further number (1.8 < 1.8a < 1.8b < 1.8.1), test releases come before the
 * release (beta < rc < none). Dates in any usual spelling compare with dates, bare build numbers with build
 * numbers; a build in brackets or after `build` decides between texts that are otherwise equal, where none comes
 * before any. Between texts of one scheme and edition that is a total order, apart from dates whose day and month
 * can be read both ways, and from two numbers with a dot that some makers count part by part and others as a decimal
 * fraction, where that decides (1.1 and 1.02, 1.2 and 1.20, 3.9 and 3.10). Common practice, no source: makers publish no grammar.
 */
export function compareFirmware(a: string, b: string): Order | null {
  return relateFirmware(a, b).order;
}

/** As `compareFirmware`, with the reason where the answer is null. */
export function relateFirmware(a: string, b: string): FirmwareComparison {
  if (normaliseFirmware(a) !== '' && normaliseFirmware(a) === normaliseFirmware(b))
    return { order: 0, reason: null };
  const one = readFirmware(a);
  const other = readFirmware(b);
  if (one.scheme === null) return unrelated(unreadable(a, one.reason));
  if (other.scheme === null) return unrelated(unreadable(b, other.reason));
  return relateReadings(one, other);
}

const unrelated = (reason: Message): FirmwareComparison => ({ order: null, reason });
const unreadable = (firmware: string, reason: Message): Message =>
  message('firmwareUnreadable', { firmware, reason });

function relateReadings(one: FirmwareReading, other: FirmwareReading): FirmwareComparison {
  const order = relateMain(one, other);
  if (order.order !== 0) return order;
  if (one.build !== null && other.build !== null) return relateReadings(one.build, other.build);
  if (one.build !== null) return { order: 1, reason: null };
  if (other.build !== null) return { order: -1, reason: null };
  if (one.hash !== '' && other.hash !== '' && one.hash !== other.hash)
    return unrelated(message('firmwareHashesDiffer'));
  return order;
}

function relateMain(one: FirmwareReading, other: FirmwareReading): FirmwareComparison {
  if (one.scheme !== other.scheme)
    return unrelated(message('firmwareSchemesDiffer', { one: one.scheme, other: other.scheme }));
  if (one.edition !== '' && other.edition !== '' && one.edition !== other.edition)
    return unrelated(message('firmwareEditionsDiffer', { one: one.edition, other: other.edition }));
  if (one.scheme === 'version' && haveTwoNumberings(one.dayFirst, other.dayFirst))
    return unrelated(message('firmwareTwoNumberings'));
  const dayFirst = compareParts(one.dayFirst, other.dayFirst);
  const monthFirst = compareParts(one.monthFirst, other.monthFirst);
  return dayFirst === monthFirst
    ? { order: dayFirst, reason: null }
    : unrelated(message('firmwareDayOrMonth'));
}

/** Two versions of two numbers at most, whose second ones stand otherwise to each other as decimal fractions. */
function haveTwoNumberings(one: FirmwarePart[], other: FirmwarePart[]): boolean {
  const [first, second] = [leadingNumbers(one), leadingNumbers(other)];
  if (first.length > 2 || second.length > 2 || first[0]?.value !== second[0]?.value) return false;
  const [a, b] = [first[1] ?? noNumber, second[1] ?? noNumber];
  const width = Math.max(a.digits.length, b.digits.length);
  const asFraction = compare(a.digits.padEnd(width, '0'), b.digits.padEnd(width, '0'));
  return asFraction !== compare(a.value, b.value);
}

const noNumber = { value: 0n, digits: '0' };

type NumberPart = Extract<FirmwarePart, { kind: 'number' }>;
function leadingNumbers(parts: readonly FirmwarePart[]): NumberPart[] {
  const end = parts.findIndex(({ kind }) => kind !== 'number');
  const run = end === -1 ? parts : parts.slice(0, end);
  return run.filter((part) => part.kind === 'number');
}

function compareParts(one: FirmwarePart[], other: FirmwarePart[]): Order {
  for (let at = 0; at < Math.max(one.length, other.length); at += 1) {
    const order = comparePart(one[at], other[at]);
    if (order !== 0) return order;
  }
  return 0;
}

/** A text that ends stands between test releases and whatever comes after a release. */
const ranks = { early: 0, end: 1, patch: 2, letter: 3, number: 4 };

function comparePart(one: FirmwarePart | undefined, other: FirmwarePart | undefined): Order {
  const kinds = compare(ranks[one?.kind ?? 'end'], ranks[other?.kind ?? 'end']);
  if (kinds !== 0 || one === undefined || other === undefined) return kinds;
  const value = (part: FirmwarePart): bigint | string => (part.kind === 'patch' ? '' : part.value);
  return compare(value(one), value(other));
}

function compare(a: number | bigint | string, b: number | bigint | string): Order {
  if (a < b) return -1;
  return a > b ? 1 : 0;
}

export type MinimumCheck = { result: 'ok'; reason: null } | { result: 'below' | 'unknown'; reason: Message };

/** Whether a device's firmware reaches a minimum; `firmware` is null where nobody has read it yet. */
export function isBelowMinimum(firmware: string | null, minimum: string): MinimumCheck['result'] {
  return checkMinimum(firmware, minimum).result;
}

/** As `isBelowMinimum`, with the reason. */
export function checkMinimum(firmware: string | null, minimum: string): MinimumCheck {
  if (firmware === null) return { result: 'unknown', reason: message('firmwareNotRead') };
  const { order, reason } = relateFirmware(firmware, minimum);
  if (order === null) return { result: 'unknown', reason };
  if (order >= 0) return { result: 'ok', reason: null };
  if (onlyTheBuildIsMissing(firmware, minimum))
    return { result: 'unknown', reason: message('firmwareWithoutBuild') };
  return { result: 'below', reason: message('firmwareOlder', { firmware, minimum }) };
}

function onlyTheBuildIsMissing(firmware: string, minimum: string): boolean {
  const one = readFirmware(firmware);
  const other = readFirmware(minimum);
  return (
    one.scheme !== null &&
    other.scheme !== null &&
    one.build === null &&
    other.build !== null &&
    relateMain(one, other).order === 0
  );
}
