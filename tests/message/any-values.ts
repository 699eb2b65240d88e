import fc from 'fast-check';
import type { Message } from '../../shared/contract/message.ts';
import { changeKinds } from '../../shared/contract/triage-names.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { enTerms } from '../../shared/message/en/index.ts';
import type { Kinds, NamedDevice, NamedPort } from '../../shared/message/index.ts';

// Any value of every kind that a message can hold, and any message. A kind without an arbitrary is a type error.

/** What people write where a program would rather they did not: marks, quotes, markup, our own words and noncharacters. */
const awkward = [
  'Nothing is plugged into it.',
  "the cable from A 'B' to C 'D'",
  "' or „ or “ or ’",
  '<b>&amp;</b>',
  '{place} %s %1$s \\n',
  '\u202Eright to left\u202C',
  'שלום عربى',
  '\uFDD0\uFDD1\uFDD2\uFDD3',
  '\uFDD30\uFDD33',
  '👩‍🔧 e\u0301',
  ' spaces  inside ',
  '12.5 % and 3 min',
  'Nichts ist daran eingesteckt.',
];
export const typed = fc.oneof(
  fc.constantFrom(...awkward),
  fc.string({ unit: 'binary', minLength: 1 }),
  fc.string({ minLength: 1 }),
);

const oneOf = <List extends keyof typeof enTerms>(list: List) =>
  fc.constantFrom(...(Object.keys(enTerms[list]) as (keyof (typeof enTerms)[List] & string)[]));

const device: fc.Arbitrary<NamedDevice> = fc.record({
  deviceId: fc.stringMatching(/^[a-z]{1,8}$/),
  role: fc.option(oneOf('role')),
  name: typed,
  isShared: fc.boolean(),
});
const port: fc.Arbitrary<NamedPort> = fc.record({
  portId: fc.stringMatching(/^[a-z]{1,8}$/),
  label: typed,
  isShared: fc.boolean(),
  device,
});
const place: fc.Arbitrary<Kinds['place']> = fc.oneof(
  fc.record({ kind: fc.constant('chain' as const), name: typed }),
  device.map((one) => ({ kind: 'device' as const, ...one })),
  port.map((one) => ({ kind: 'port' as const, ...one })),
  fc.record({
    kind: fc.constant('link' as const),
    linkId: fc.stringMatching(/^[a-z]{1,8}$/),
    isExtender: fc.boolean(),
    ends: fc.option(fc.record({ from: port, to: port })),
  }),
  fc.constant({ kind: 'outside' as const }),
);
const amount = fc.double({ min: 0, max: 10_000, noNaN: true });

const anyOf: { [Of in Exclude<keyof Kinds, 'message'>]: fc.Arbitrary<Kinds[Of]> } = {
  place,
  device,
  port,
  text: typed,
  name: typed,
  term: fc.constantFrom('TMDS', 'v1.2', '/links/0'),
  count: fc.nat(1000),
  number: amount,
  minutes: amount,
  seconds: amount,
  metres: amount,
  gbps: amount,
  mhz: amount,
  milliampere: amount,
  percent: fc.double({ min: 0, max: 1, noNaN: true }),
  rate: amount,
  moment: fc
    .date({ noInvalidDate: true, min: new Date('2000-01-01'), max: new Date('2100-01-01') })
    .map((at) => at.toISOString()),
  date: fc
    .date({ noInvalidDate: true, min: new Date('2000-01-01'), max: new Date('2100-01-01') })
    .map((at) => at.toISOString().slice(0, 10)),
  format: fc.record({
    widthPx: fc.constantFrom(720, 1920, 3840),
    heightPx: fc.constantFrom(576, 1080, 2160),
    interlaced: fc.boolean(),
    refreshHz: fc.constantFrom(23.976, 50, 59.94, 60),
    encoding: fc.constantFrom('rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'),
    bitsPerComponent: fc.constantFrom(8, 10, 12),
  }),
  mode: fc.oneof(
    fc.record({ kind: fc.constant('tmds' as const), maxCharacterRateMHz: fc.constantFrom(74.25, 340, 600) }),
    fc.record({
      kind: fc.constant('frl' as const),
      lanes: fc.constantFrom(3, 4),
      gbpsPerLane: fc.constantFrom(3, 12),
    }),
  ),
  encoding: fc.constantFrom('rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'),
  flag: fc.boolean(),
  setting: fc.oneof(typed, fc.nat(1000), fc.boolean()),
  protection: fc.constantFrom('none', '1.4', '2.2', '2.3', 'unknown'),
  threeState: fc.constantFrom('yes', 'no', 'unknown'),
  cableEnd: fc.constantFrom('source', 'display'),
  cableDirection: fc.constantFrom('notDirectional', 'asMarked', 'reversed', 'unknown'),
  route: fc.constantFrom('free', 'inWall', 'inConduit'),
  construction: fc.constantFrom('passiveCopper', 'activeCopper', 'activeOptical', 'twistedPairExtender'),
  category: fc.constantFrom('standard', 'highSpeed', 'premiumHighSpeed', 'ultraHighSpeed', 'unknown'),
  severity: fc.constantFrom('mustFix', 'shouldFix', 'note'),
  verdict: fc.constantFrom('cleared', 'persists', 'inconclusive'),
  side: fc.constantFrom('input', 'output'),
  menu: fc.constantFrom('stayed', 'vanished'),
  firmwareScheme: fc.constantFrom('version', 'date', 'buildNumber', 'hexadecimal'),
  memberRole: oneOf('memberRole'),
  state: oneOf('state'),
  symptom: oneOf('symptom'),
  patternTrigger: oneOf('patternTrigger'),
  onlyWith: oneOf('onlyWith'),
  priority: oneOf('priority'),
  hazard: oneOf('hazard'),
  role: oneOf('role'),
  logEvent: oneOf('logEvent'),
  edidTopic: oneOf('edidTopic'),
  completenessItem: oneOf('completenessItem'),
  evidenceKind: oneOf('evidenceKind'),
  choiceWay: oneOf('choiceWay'),
  followUpOutcome: oneOf('followUpOutcome'),
  checkAnswer: oneOf('checkAnswer'),
  lateFinding: oneOf('lateFinding'),
  waitingKind: oneOf('waitingKind'),
  actingParty: oneOf('actingParty'),
  whatChanged: oneOf('whatChanged'),
  changeKind: fc.constantFrom(...changeKinds),
  hdrKind: oneOf('hdrKind'),
  conversion: oneOf('conversion'),
  signalField: oneOf('signalField'),
  command: oneOf('command'),
  fact: oneOf('fact'),
};

/** A part that is itself a message; that it is one of somebody's words keeps the tree of messages small. */
const part: fc.Arbitrary<Message> = typed.map((sentence) => ({ code: 'asWritten', values: { sentence } }));

export function anyValue(type: string): fc.Arbitrary<unknown> {
  const base = type.replace(/(\[\]|\?)$/, '');
  const one: fc.Arbitrary<unknown> =
    base === 'message'
      ? part
      : ((anyOf as Record<string, fc.Arbitrary<unknown>>)[base] as fc.Arbitrary<unknown>);
  if (type.endsWith('[]')) return fc.array(one, { minLength: 1, maxLength: 3 });
  return type.endsWith('?') ? fc.option(one) : one;
}

/** Any values of a code. */
export const anyMessage = (code: keyof typeof codes): fc.Arbitrary<Message> =>
  fc
    .record(Object.fromEntries(Object.entries(codes[code]).map(([name, type]) => [name, anyValue(type)])))
    .map((values) => ({ code, values }));
