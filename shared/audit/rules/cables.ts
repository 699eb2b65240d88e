import { bareName } from '../../chain/graph.ts';
import { categoryNames, constructionNames, metres } from '../../chain/link-words.ts';
import { listed, sentenceStart } from '../../chain/sentences.ts';
import { bitRateGbps, gbps } from '../../chain/signal-mode.ts';
import type { Link, LinkEnd } from '../../contract/chain.ts';
import { pluggingCautions, poweringCautions, replacingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

/**
 * Gross bit rate that cables of a category are tested for, Gbit/s: 74.25 MHz, 340 MHz, 18 and 48 Gbit/s.
 * Source: the cable categories of the HDMI compliance programme (from memory).
 */
const testedForGbps: Record<Link['category'], number | null> = {
  standard: 2.2275,
  highSpeed: 10.2,
  premiumHighSpeed: 18,
  ultraHighSpeed: 48,
  unknown: null,
};

/** What the link has to pass: the required rate, or less where a port at one of its ends can't do that. */
export function neededGbps({ ends, assumptions }: LinkContext): number {
  return Math.min(
    assumptions.requiredGbps,
    bitRateGbps(ends.output.highestMode),
    bitRateGbps(ends.input.highestMode),
  );
}

function certification(context: LinkContext): Observation[] {
  const { link, name } = context;
  if (link.construction === 'twistedPairExtender') return [];
  const good = testedForGbps[link.category];
  const needed = neededGbps(context);
  if (good === null)
    return [
      {
        severity: 'note',
        text: `The category of ${name} isn't known.`,
        whatToDo:
          'Look for the certification label on the cable or its packing, scan it, and note the category.',
        cautions: [],
      },
    ];
  if (good < needed)
    return [
      {
        severity: 'mustFix',
        text: `${sentenceStart(name)} is of category ${categoryNames[link.category]}, tested for ${gbps(good)}, between ports that pass ${gbps(needed)}.`,
        whatToDo: `Replace it with a cable that is certified for ${needed > 18 ? '' : '18 Gbit/s or '}48 Gbit/s.`,
        cautions: replacingCautions(context),
      },
    ];
  // Only these two categories come with a label to scan.
  const labelled = link.category === 'premiumHighSpeed' || link.category === 'ultraHighSpeed';
  if (link.certified || !labelled) return [];
  return [
    {
      severity: 'shouldFix',
      text: `${sentenceStart(name)} is said to be ${categoryNames[link.category]}, but nobody has seen its certification label.`,
      whatToDo: 'Find the label and scan it. Without one, replace the cable with a certified one.',
      cautions: replacingCautions(context),
    },
  ];
}

/** Lengths are "about": a tape measure and a foot rule differ by more than a tenth of a metre. */
const toTenth = (lengthM: number): number => Math.round(lengthM * 10) / 10;
const withFeet = (lengthM: number): string => `${metres(lengthM)} (${Math.round(lengthM / 0.3048)} ft)`;

function shortLength(context: LinkContext): Observation[] {
  const { link, name, assumptions } = context;
  if (link.construction === 'twistedPairExtender' || toTenth(link.lengthM) >= assumptions.shortestCableM)
    return [];
  return [
    {
      severity: 'shouldFix',
      text: `${sentenceStart(name)} is only ${metres(link.lengthM)} long; below about ${withFeet(assumptions.shortestCableM)} cables give trouble more often.`,
      whatToDo: `Replace it with a certified cable of at least about ${withFeet(assumptions.shortestCableM)}.`,
      cautions: replacingCautions(context),
    },
  ];
}

function longLength(context: LinkContext): Observation[] {
  const { link, ends, name, assumptions } = context;
  const copper = link.construction === 'passiveCopper' || link.construction === 'activeCopper';
  if (!copper || toTenth(link.lengthM) <= assumptions.longestCopperM) return [];
  const hopeless = link.construction === 'passiveCopper' && neededGbps(context) >= assumptions.requiredGbps;
  return [
    {
      severity: hopeless ? 'mustFix' : 'shouldFix',
      text: `${sentenceStart(name)} is ${constructionNames[link.construction]} and ${metres(link.lengthM)} long; copper is good for about ${withFeet(assumptions.longestCopperM)}.`,
      whatToDo:
        ends.source.role === 'source'
          ? 'Move the source nearer, or go through a switch or receiver and lay an active optical cable with factory-fitted ends from there.'
          : 'Replace it with an active optical cable whose ends were fitted in the factory.',
      cautions: replacingCautions(context, true),
    },
  ];
}

function factoryEnds(context: LinkContext): Observation[] {
  const { link, name } = context;
  if (link.construction !== 'activeOptical' || link.factoryFittedEnds === true) return [];
  const known = link.factoryFittedEnds === false;
  return [
    {
      severity: known ? 'shouldFix' : 'note',
      text: known
        ? `The ends of ${name} were fitted on site.`
        : `It isn't known whether the ends of ${name} were fitted in the factory.`,
      whatToDo: known
        ? 'Replace it with an active optical cable whose ends were fitted in the factory.'
        : 'Look at both ends and note it.',
      cautions: known ? replacingCautions(context) : pluggingCautions(context),
    },
  ];
}

function opticalOnSource(context: LinkContext): Observation[] {
  const {
    link,
    name,
    ends: { source, output, input },
  } = context;
  if (link.construction !== 'activeOptical' || source.role !== 'source') return [];
  const figures = output.fiveVoltMa !== null && link.drawMa !== null;
  const supplyMa = output.fiveVoltMa ?? 0;
  const drawMa = (link.drawMa ?? 0) + (input.fiveVoltMa ?? 0);
  const enough = link.sourceEnd.powered === 'yes' || (figures && supplyMa >= drawMa);
  const why = figures
    ? `its 5 V line supplies ${supplyMa} mA where ${drawMa} mA are drawn`
    : "a source's 5 V line often can't feed one";
  return [
    {
      severity: enough ? 'note' : figures ? 'mustFix' : 'shouldFix',
      text: enough
        ? `${sentenceStart(name)} is active optical, straight from a playback source; it is fed as noted, and still the first to suspect.`
        : `${sentenceStart(name)} is active optical, straight from a playback source: ${why}.`,
      whatToDo: enough
        ? 'Check the supply at the source end, and keep a passive cable at hand for a test.'
        : 'Go from the source into a switch, receiver or processor with a passive cable, or feed the optical cable by its own supply at the source end.',
      cautions: enough ? poweringCautions(context) : replacingCautions(context),
    },
  ];
}

function twistedPair(context: LinkContext): Observation[] {
  if (context.link.construction !== 'twistedPairExtender') return [];
  return [
    {
      severity: 'shouldFix',
      text: `${sentenceStart(context.name)} is best avoided: it adds its own electronics, supplies and handshakes to the way.`,
      whatToDo:
        'Replace it with an active optical cable with factory-fitted ends, or lay one across for a test.',
      cautions: replacingCautions(context, true),
    },
  ];
}

function direction(context: LinkContext): Observation[] {
  const { link, name } = context;
  const active = link.construction === 'activeOptical' || link.construction === 'activeCopper';
  const finding = (severity: Observation['severity'], text: string, whatToDo: string): Observation[] => [
    { severity, text, whatToDo, cautions: pluggingCautions(context) },
  ];
  const look = 'Read the marks at both plugs: the end marked as source goes to the device nearer the source.';
  if (link.direction === 'reversed')
    return finding('mustFix', `${sentenceStart(name)} lies the wrong way round.`, `Turn it round. ${look}`);
  if (link.direction === 'unknown')
    return finding(
      active ? 'shouldFix' : 'note',
      active
        ? `Nobody has noted which way round ${name} lies, and it is active: the wrong way it passes nothing, or only sometimes.`
        : `It isn't known whether ${name} is directional.`,
      active ? look : `Look for an arrow or a marked end. ${look}`,
    );
  if (link.direction === 'notDirectional' && active)
    return finding(
      'note',
      `${sentenceStart(name)} is noted as not directional, but active cables are.`,
      `${look} Then correct the record.`,
    );
  return [];
}

type End = { end: LinkEnd; deviceId: string };
const bothEnds = ({ link }: LinkContext): End[] => [
  { end: link.sourceEnd, deviceId: link.from.deviceId },
  { end: link.sinkEnd, deviceId: link.to.deviceId },
];

function endPower(context: LinkContext): Observation[] {
  const { chain, name } = context;
  return bothEnds(context).flatMap(({ end, deviceId }): Observation[] => {
    if (!end.needsPower || end.powered === 'yes') return [];
    const where = `at ${bareName(chain, deviceId)}`;
    const missing = end.powered === 'no';
    return [
      {
        severity: missing ? 'mustFix' : 'note',
        text: missing
          ? `${sentenceStart(name)} needs power ${where} and has none.`
          : `${sentenceStart(name)} needs power ${where}; nobody has noted whether it has it.`,
        whatToDo: missing
          ? `Plug in the supply that its maker asks for ${where}, not a socket that goes off with the device.`
          : `Check the supply ${where}, also while the devices are on standby.`,
        cautions: poweringCautions(context),
      },
    ];
  });
}

function seating(context: LinkContext): Observation[] {
  const { chain, name } = context;
  const where = (state: LinkEnd['seated']): string[] =>
    bothEnds(context)
      .filter(({ end }) => end.seated === state)
      .map(({ deviceId }) => bareName(chain, deviceId));
  const loose = where('no');
  const unknown = where('unknown');
  if (loose.length === 0 && unknown.length === 0) return [];
  return [
    {
      severity: loose.length > 0 ? 'mustFix' : 'note',
      text:
        loose.length > 0
          ? `${sentenceStart(name)} isn't fully seated at ${listed(loose)}.`
          : `Nobody has checked the seat of ${name} at ${listed(unknown)}.`,
      whatToDo: 'Push both plugs home, look for a bent shell or a pull on the cable, and relieve the pull.',
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
  {
    ...rule('certification', certification),
    source:
      'cable categories of the HDMI compliance programme (from memory); which to ask for: common practice',
  },
  rule('length-short', shortLength),
  rule('length-long', longLength),
  rule('factory-fitted-ends', factoryEnds),
  rule('optical-on-source-power', opticalOnSource),
  rule('twisted-pair-extender', twistedPair),
  rule('direction', direction),
  rule('end-power', endPower),
  rule('seating', seating),
];
