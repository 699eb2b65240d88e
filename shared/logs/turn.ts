import { colon, greaterThan, lowerT, space } from './ascii.ts';
import { textOf } from './bytes.ts';
import type { Turn } from './recognition-row.ts';

const equals = 61;
const lowerI = 105;
const lowerN = 110;
const lowerW = 119;
/** The first byte of an arrow in UTF-8. */
const arrowByte = 0xe2;

const words = (list: string): Set<string> => new Set(list.split(' '));

/** States that a line names, for the better and for the worse: common practice, no source. */
const good = words(
  '1 h y high on up yes true present connected attached plugged inserted lock locked valid stable auth authenticated ok good pass passed active enabled encrypted synced ready trained found detected',
);
const bad = words(
  '0 l n low off down no false absent disconnected detached unplugged removed unlock unlocked invalid unstable unauth unauthenticated ng bad fail failed error lost none null inactive disabled unencrypted missing search searching hunt',
);
const isGood = (state: string): boolean => good.has(state);
const isBad = (state: string): boolean => bad.has(state) || state.startsWith('not ');

/** What was, what is; `loose` where an arrow parts them, so that one known state is enough. */
type Pair = { from: string; to: string; loose: boolean };

const state = "((?:\\bnot\\s+)?[\\w.+']+)";
const arrow = new RegExp(`${state}"?\\s*(?:-+>|=+>|→)\\s*"?${state}`, 'gi');
/** `from high to low`, `"from":1,"to":0`, `lanes 4 to 3`. */
const spelt = /([\w.+']+)"?[\s,;]*"?(?:\b(?:down|up|back)\s+)?\bto\b[\s:"=]*([\w.+']+)/gi;
/** `hpd=0 (was 1)`. */
const was = /([\w.+']+)\s*[,;(]\s*(?:was|previously|before)\b[\s:="]*([\w.+']+)/gi;
/** Something that is or isn't so: `lock=0`, `video detect: NO`, `level now 1`. */
const assigned =
  /(?:lock(?:ed)?|sync|valid|stable|present|detect(?:ed)?|det|hpd|hot_?plug|plug(?:ged)?|connected|signal|clk|clock|enc|auth(?:enticated)?|encrypt(?:ed|ion)?|good|level|sense|rxsense|5v|power|active|status|state|line)\w?["\]]?\s*(?:=>|->|=|:|\bis\b|\bnow\b)\s*(?:now\s+)?"?(0|1|l|h|n|y|no|yes|false|true|low|high|off|on|lost|absent|present|none)\b(?!\s*(?:->|=>|→|\())/gi;

const unit = /(\d)\s*(?:gbps|gbit\/s|gb\/s|gbit|mbps|mbit\/s|mhz|ghz|hz|lanes?|v)\b/g;

/** Each form with what a line must have for it: looking for that first is what keeps reading quick. */
const forms: readonly { sign: RegExp; form: RegExp; of: (first: string, second: string) => Pair }[] = [
  { sign: /[>→]/, form: arrow, of: (from, to) => ({ from, to, loose: true }) },
  { sign: /\bto\b/, form: spelt, of: (from, to) => ({ from, to, loose: false }) },
  { sign: /was|previously|before/, form: was, of: (to, from) => ({ from, to, loose: false }) },
];

const pairsIn = (line: string): Pair[] =>
  forms.flatMap(({ sign, form, of }) =>
    sign.test(line) ? [...line.matchAll(form)].map(([, first = '', second = '']) => of(first, second)) : [],
  );

const figuresIn = (text: string): number[] => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);

/** Above 0 where the second says more, the first figure that differs deciding: `12g4l` to `12g3l` is less. */
function rise({ from, to }: Pair): number {
  const before = figuresIn(from);
  const after = figuresIn(to);
  const index = before.findIndex((figure, at) => after[at] !== undefined && after[at] !== figure);
  return index < 0 ? 0 : (after[index] as number) - (before[index] as number);
}

const isFigure = (text: string): boolean => /^\d/.test(text);

function turns({ from, to, loose }: Pair, left: typeof isGood, entered: typeof isBad): boolean {
  if (left(from) && entered(to)) return true;
  if (!loose) return false;
  return (left(from) && !isFigure(from) && !left(to)) || (entered(to) && !isFigure(to) && !entered(from));
}

/** All ways in which a line says that something turned, as in `lock: 1 -> 0` or `rate 12 to 8`, or stands: `lock=0`. */
export function turnsOf(text: string): Set<Turn> {
  const found = new Set<Turn>();
  const line = text.toLowerCase().replace(unit, '$1');
  const pairs = pairsIn(line);
  const isState = (each: string): boolean => isGood(each) || isBad(each);
  const states = pairs.filter(({ from, to }) => isState(from) || (isState(to) && !isFigure(to)));
  for (const pair of states) {
    if (turns(pair, isGood, isBad)) found.add('off');
    if (turns(pair, isBad, isGood)) found.add('on');
  }
  for (const pair of pairs) {
    const by = rise(pair);
    if (by !== 0) found.add(by < 0 ? 'lower' : 'higher');
  }
  if (states.length > 0) return found;
  for (const [, value = ''] of line.matchAll(assigned)) found.add(isBad(value) ? 'off' : 'on');
  return found;
}

const none: ReadonlySet<Turn> = new Set();

/** The same of a line in UTF-8. Most lines have no sign that parts two states, which is quicker to see. */
export function turnsIn(bytes: Uint8Array, start: number, end: number): ReadonlySet<Turn> {
  return hasSign(bytes, start, end) ? turnsOf(textOf(bytes, start, end)) : none;
}

/** Bytes that `=`, `:`, `>`, `→` begin with; and the words ` to `, ` is ` and ` now `, by a blank and their first letter. */
function hasSign(bytes: Uint8Array, start: number, end: number): boolean {
  for (let index = start; index < end; index += 1) {
    const byte = bytes[index] as number;
    if (byte === colon || byte === equals || byte === greaterThan || byte === arrowByte) return true;
    if (byte !== space || index + 2 >= end) continue;
    const first = (bytes[index + 1] as number) | 0x20;
    if (first === lowerT || first === lowerI || first === lowerN || first === lowerW) return true;
  }
  return false;
}
