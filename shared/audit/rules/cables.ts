import { namedDevice } from '../../chain/named-place.ts';
import type { LinkEnd } from '../../contract/chain.ts';
import { type Message, message, type NamedDevice } from '../../message/index.ts';
import { returnAudioOf } from '../../signal/return-audio.ts';
import { pluggingCautions, poweringCautions, replacingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

/** Lengths are "about": a tape measure and a foot rule differ by more than a tenth of a metre. */
const toTenth = (lengthM: number): number => Math.round(lengthM * 10) / 10;

/** A certified cable passed its test in the length that it has. */
function shortLength(context: LinkContext): Observation[] {
  const { link, named: cable, assumptions } = context;
  const shortest = assumptions.shortestCableM;
  const isTested = link.certified || link.construction === 'twistedPairExtender';
  if (isTested || toTenth(link.lengthM) >= shortest) return [];
  return [
    {
      severity: 'shouldFix',
      text: message('cableTooShort', { cable, length: link.lengthM, shortest }),
      whatToDo: message('replaceByLongerCable', { shortest }),
      cautions: replacingCautions(context),
    },
  ];
}

/** An end that asks for power and has none. */
const isUnfed = ({ needsPower, powered }: LinkEnd): boolean => needsPower && powered === 'no';

function opticalOnSource(context: LinkContext): Observation[] {
  const { link, named: cable, power } = context;
  // What is short by the record, or lacks its supply, is a finding of its own.
  if (!power.opticalOnSource || power.verdict === 'short' || isUnfed(link.sourceEnd) || isUnfed(link.sinkEnd))
    return [];
  return power.verdict === 'enough'
    ? [
        {
          severity: 'note',
          text: message('opticalFromSourceFed', { cable }),
          whatToDo: message('checkSupplyAtSource'),
          cautions: poweringCautions(context),
        },
      ]
    : [
        {
          severity: 'shouldFix',
          text: message('opticalFromSource', { cable }),
          whatToDo: message('feedOpticalAnotherWay'),
          cautions: replacingCautions(context),
        },
      ];
}

function fiveVolt(context: LinkContext): Observation[] {
  const { link, named: cable, power } = context;
  if (power.verdict !== 'short' || isUnfed(link.sourceEnd) || isUnfed(link.sinkEnd)) return [];
  return [
    {
      severity: 'mustFix',
      text: message('linkUnderfed', { cable, budget: power.sentence }),
      whatToDo: message(power.opticalOnSource ? 'feedOpticalAnotherWay' : 'powerCable'),
      cautions: [
        ...new Set([
          ...(power.opticalOnSource ? replacingCautions(context) : []),
          ...poweringCautions(context),
        ]),
      ],
    },
  ];
}

/** Where the pair can't do what is asked of it, that finding says what to lay in its place. */
function twistedPair(context: LinkContext): Observation[] {
  const hasToGo = context.faults.some(
    (fault) =>
      fault.of === 'cable' && (fault.shortfall.cause === 'rate' || fault.shortfall.cause === 'length'),
  );
  if (context.link.construction !== 'twistedPairExtender' || hasToGo) return [];
  return [
    {
      severity: 'shouldFix',
      text: message('twistedPairBestAvoided', { cable: context.named }),
      whatToDo: message('replaceTwistedPair'),
      cautions: replacingCautions(context, true),
    },
  ];
}

function direction(context: LinkContext): Observation[] {
  const { link, named: cable } = context;
  const active = link.construction === 'activeOptical' || link.construction === 'activeCopper';
  const finding = (severity: Observation['severity'], text: Message, whatToDo: Message): Observation[] => [
    { severity, text, whatToDo, cautions: pluggingCautions(context) },
  ];
  if (link.direction === 'reversed') {
    const isExtender = link.construction === 'twistedPairExtender';
    const remedy = message(isExtender ? 'swapExtenderEnds' : 'turnCableRound');
    return finding('mustFix', message('cableReversed', { cable }), remedy);
  }
  if (link.direction === 'unknown')
    return active
      ? finding('shouldFix', message('activeCableDirectionUnknown', { cable }), message('readMarksAtPlugs'))
      : finding('note', message('cableDirectionUnknown', { cable }), message('lookForArrow'));
  if (link.direction === 'notDirectional' && active)
    return finding('note', message('activeCableNotDirectional', { cable }), message('readMarksAndCorrect'));
  return [];
}

function returnAudio({ chain, link }: LinkContext): Observation[] {
  return returnAudioOf(chain)
    .filter(({ linkId, carried }) => linkId === link.id && carried !== 'yes')
    .map(({ carried, sentence }) => ({
      severity: carried === 'no' ? 'shouldFix' : 'note',
      text: sentence,
      whatToDo: message(carried === 'no' ? 'useCableWithReturnAudio' : 'tryReturnAudio'),
      cautions: [],
    }));
}

type End = { end: LinkEnd; at: NamedDevice };
const bothEnds = ({ chain, link }: LinkContext): End[] => [
  { end: link.sourceEnd, at: namedDevice(chain, link.from.deviceId) },
  { end: link.sinkEnd, at: namedDevice(chain, link.to.deviceId) },
];

/** An extender is fed somewhere, whatever the record says of its ends. */
function extenderSupply(context: LinkContext): Observation[] {
  const { link, named: cable } = context;
  if (link.construction !== 'twistedPairExtender') return [];
  if (link.sourceEnd.needsPower || link.sinkEnd.needsPower) return [];
  return [
    {
      severity: 'note',
      text: message('extenderSupplyUnknown', { cable }),
      whatToDo: message('checkExtenderSupply'),
      cautions: poweringCautions(context),
    },
  ];
}

function endPower(context: LinkContext): Observation[] {
  const { named: cable } = context;
  return [
    ...extenderSupply(context),
    ...bothEnds(context).flatMap(({ end, at }): Observation[] => {
      if (!end.needsPower || end.powered === 'yes') return [];
      const missing = end.powered === 'no';
      return [
        {
          severity: missing ? 'mustFix' : 'note',
          text: missing
            ? message('cableEndWithoutPower', { cable, at })
            : message('cableEndPowerUnknown', { cable, at }),
          whatToDo: missing ? message('plugInSupply', { at }) : message('checkSupply', { at }),
          cautions: poweringCautions(context),
        },
      ];
    }),
  ];
}

function seating(context: LinkContext): Observation[] {
  const { named: cable } = context;
  const where = (state: LinkEnd['seated']): NamedDevice[] =>
    bothEnds(context).flatMap(({ end, at }) => (end.seated === state ? [at] : []));
  const loose = where('no');
  const unknown = where('unknown');
  if (loose.length === 0 && unknown.length === 0) return [];
  return [
    {
      severity: loose.length > 0 ? 'mustFix' : 'note',
      text:
        loose.length > 0
          ? message('plugNotSeated', { cable, at: loose })
          : message('plugSeatUnchecked', { cable, at: unknown }),
      whatToDo: message('pushPlugsHome'),
      cautions: pluggingCautions(context),
    },
  ];
}

const rule = (id: string, check: Rule<LinkContext>['check']): Rule<LinkContext> => ({
  id,
  source: commonPractice,
  urgentFor: [],
  check,
});

/** Prerequisites of each cable but for the rate that it passes. */
export const cableRules: readonly Rule<LinkContext>[] = [
  rule('length-short', shortLength),
  rule('optical-on-source-power', opticalOnSource),
  {
    ...rule('five-volt', fiveVolt),
    source: message('standardFromMemory', { standard: 'HDMI 1.4b', clause: '4.2.7' }),
  },
  rule('twisted-pair-extender', twistedPair),
  rule('direction', direction),
  rule('end-power', endPower),
  rule('seating', seating),
  { id: 'return-audio', source: commonPractice, urgentFor: [], check: returnAudio },
];
