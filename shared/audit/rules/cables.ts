import { namedDevice } from '../../chain/named-place.ts';
import { bitRateGbps } from '../../chain/signal-mode.ts';
import { hasLabel, testedForGbps } from '../../chain/tested-rate.ts';
import type { LinkEnd } from '../../contract/chain.ts';
import { type Message, message, type NamedDevice } from '../../message/index.ts';
import { pluggingCautions, poweringCautions, replacingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

/** What the link has to pass: the required rate, or less where a port at one of its ends can't do that. */
export function neededGbps({ ends, assumptions }: LinkContext): number {
  return Math.min(
    assumptions.requiredGbps,
    bitRateGbps(ends.output.highestMode),
    bitRateGbps(ends.input.highestMode),
  );
}

function certification(context: LinkContext): Observation[] {
  const { link, named: cable } = context;
  const { category } = link;
  if (link.construction === 'twistedPairExtender') return [];
  const testedFor = testedForGbps[category];
  const needed = neededGbps(context);
  if (testedFor === null)
    return [
      {
        severity: 'note',
        text: message('cableCategoryUnknown', { cable }),
        whatToDo: message('lookForCertificationLabel'),
        cautions: [],
      },
    ];
  if (testedFor < needed)
    return [
      {
        severity: 'mustFix',
        text: message('cableCategoryTooLow', { cable, category, testedFor, needed }),
        whatToDo: message('replaceByCertifiedCable', { rates: needed > 18 ? [48] : [18, 48] }),
        cautions: replacingCautions(context),
      },
    ];
  // Only these two categories come with a label to scan.
  if (link.certified || !hasLabel(category)) return [];
  return [
    {
      severity: 'shouldFix',
      text: message('cableCertificationUnseen', { cable, category }),
      whatToDo: message('findCertificationLabel'),
      cautions: replacingCautions(context),
    },
  ];
}

/** Lengths are "about": a tape measure and a foot rule differ by more than a tenth of a metre. */
const toTenth = (lengthM: number): number => Math.round(lengthM * 10) / 10;

function shortLength(context: LinkContext): Observation[] {
  const { link, named: cable, assumptions } = context;
  const shortest = assumptions.shortestCableM;
  if (link.construction === 'twistedPairExtender' || toTenth(link.lengthM) >= shortest) return [];
  return [
    {
      severity: 'shouldFix',
      text: message('cableTooShort', { cable, length: link.lengthM, shortest }),
      whatToDo: message('replaceByLongerCable', { shortest }),
      cautions: replacingCautions(context),
    },
  ];
}

function longLength(context: LinkContext): Observation[] {
  const { link, ends, named: cable, assumptions } = context;
  const { construction, lengthM: length } = link;
  const longest = assumptions.longestCopperM;
  const copper = construction === 'passiveCopper' || construction === 'activeCopper';
  if (!copper || toTenth(length) <= longest) return [];
  const hopeless = construction === 'passiveCopper' && neededGbps(context) >= assumptions.requiredGbps;
  return [
    {
      severity: hopeless ? 'mustFix' : 'shouldFix',
      text: message('cableTooLong', { cable, construction, length, longest }),
      whatToDo:
        ends.source.role === 'source'
          ? message('moveSourceNearer')
          : message('replaceByFactoryFittedOptical'),
      cautions: replacingCautions(context, true),
    },
  ];
}

function factoryEnds(context: LinkContext): Observation[] {
  const { link, named: cable } = context;
  if (link.construction !== 'activeOptical' || link.factoryFittedEnds === true) return [];
  if (link.factoryFittedEnds === null)
    return [
      {
        severity: 'note',
        text: message('cableEndsUnknown', { cable }),
        whatToDo: message('lookAtBothEnds'),
        cautions: pluggingCautions(context),
      },
    ];
  return [
    {
      severity: 'shouldFix',
      text: message('cableEndsFittedOnSite', { cable }),
      whatToDo: message('replaceByFactoryFittedOptical'),
      cautions: replacingCautions(context),
    },
  ];
}

function opticalOnSource(context: LinkContext): Observation[] {
  const {
    link,
    named: cable,
    ends: { source, output, input },
  } = context;
  if (link.construction !== 'activeOptical' || source.role !== 'source') return [];
  const figures =
    output.fiveVoltMa === null || link.drawMa === null
      ? null
      : { supply: output.fiveVoltMa, draw: link.drawMa + (input.fiveVoltMa ?? 0) };
  if (link.sourceEnd.powered === 'yes' || (figures !== null && figures.supply >= figures.draw))
    return [
      {
        severity: 'note',
        text: message('opticalFromSourceFed', { cable }),
        whatToDo: message('checkSupplyAtSource'),
        cautions: poweringCautions(context),
      },
    ];
  return [
    {
      severity: figures === null ? 'shouldFix' : 'mustFix',
      text:
        figures === null
          ? message('opticalFromSource', { cable })
          : message('opticalFromSourceUnderfed', { cable, ...figures }),
      whatToDo: message('feedOpticalAnotherWay'),
      cautions: replacingCautions(context),
    },
  ];
}

function twistedPair(context: LinkContext): Observation[] {
  if (context.link.construction !== 'twistedPairExtender') return [];
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
  if (link.direction === 'reversed')
    return finding('mustFix', message('cableReversed', { cable }), message('turnCableRound'));
  if (link.direction === 'unknown')
    return active
      ? finding('shouldFix', message('activeCableDirectionUnknown', { cable }), message('readMarksAtPlugs'))
      : finding('note', message('cableDirectionUnknown', { cable }), message('lookForArrow'));
  if (link.direction === 'notDirectional' && active)
    return finding('note', message('activeCableNotDirectional', { cable }), message('readMarksAndCorrect'));
  return [];
}

type End = { end: LinkEnd; at: NamedDevice };
const bothEnds = ({ chain, link }: LinkContext): End[] => [
  { end: link.sourceEnd, at: namedDevice(chain, link.from.deviceId) },
  { end: link.sinkEnd, at: namedDevice(chain, link.to.deviceId) },
];

function endPower(context: LinkContext): Observation[] {
  const { named: cable } = context;
  return bothEnds(context).flatMap(({ end, at }): Observation[] => {
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
  });
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

/** Prerequisites of each cable. */
export const cableRules: readonly Rule<LinkContext>[] = [
  { ...rule('certification', certification), source: message('cableCategories') },
  rule('length-short', shortLength),
  rule('length-long', longLength),
  rule('factory-fitted-ends', factoryEnds),
  rule('optical-on-source-power', opticalOnSource),
  rule('twisted-pair-extender', twistedPair),
  rule('direction', direction),
  rule('end-power', endPower),
  rule('seating', seating),
];
