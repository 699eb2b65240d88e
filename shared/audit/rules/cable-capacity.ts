import { testedForGbps } from '../../chain/tested-rate.ts';
import type { Finding } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import type { LinkFault } from '../../signal/link-budget/index.ts';
import { pluggingCautions, replacingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

type CableFault = Extract<LinkFault, { of: 'cable' }>;
type Cause = CableFault['shortfall']['cause'];

const faultOf = ({ faults }: LinkContext): CableFault | undefined =>
  faults.find((fault): fault is CableFault => fault.of === 'cable');

/** A rule for the one cause that the budget finds in a cable; its other causes are other rules'. */
const ruleFor =
  (causes: Partial<Record<Cause, (context: LinkContext, fault: CableFault) => Observation>>) =>
  (context: LinkContext): Observation[] => {
    const fault = faultOf(context);
    const observe = fault && causes[fault.shortfall.cause];
    return fault && observe ? [observe(context, fault)] : [];
  };

/** What is known to be bad has to go; what can't be counted on should. */
const severityOf = ({ shortfall }: CableFault): Finding['severity'] =>
  shortfall.isKnown ? 'mustFix' : 'shouldFix';

const ratesFor = ({ needGbps }: CableFault): number[] => (needGbps > 18 ? [48] : [18, 48]);

/**
 * Another cable in its place: copper as far as that is counted on, and optical past it, but not straight on a source, unless
 * one that reaches far enough lies there already.
 */
function another(context: LinkContext, fault: CableFault): Pick<Observation, 'whatToDo' | 'cautions'> {
  const { link, ends } = context;
  const isCopper = link.lengthM <= fault.shortfall.passiveReachM;
  const isOptical = link.construction === 'activeOptical' && fault.shortfall.cause !== 'length';
  const rates = ratesFor(fault);
  return {
    whatToDo: isCopper
      ? message('replaceByCertifiedCable', { rates })
      : ends.source.role === 'source' && !isOptical
        ? message('moveSourceNearer')
        : message('replaceByCertifiedOptical', { rates }),
    cautions: replacingCautions(context, !isCopper),
  };
}

const replace =
  (text: (context: LinkContext, fault: CableFault) => Message) =>
  (context: LinkContext, fault: CableFault): Observation => ({
    severity: severityOf(fault),
    text: text(context, fault),
    ...another(context, fault),
  });

const look = (text: Message, whatToDo: Message): Observation => ({
  severity: 'note',
  text,
  whatToDo,
  cautions: [],
});
const categoryUnknown = ({ named: cable }: LinkContext): Observation =>
  look(message('cableCategoryUnknown', { cable }), message('lookForCertificationLabel'));

const ofCertification = ruleFor({
  category: replace(({ link: { category }, named: cable }, { needGbps: needed }) =>
    message('cableTestedForLess', { cable, category, testedFor: testedForGbps[category] ?? 0, needed }),
  ),
  rate: (context, fault) => {
    const { link, named: cable } = context;
    const rated = link.rated?.gbps ?? testedForGbps[link.category] ?? 0;
    const text = message('extenderRatedForLess', { cable, rated, needed: fault.needGbps });
    if (link.construction !== 'twistedPairExtender')
      return { severity: severityOf(fault), text, ...another(context, fault) };
    return {
      severity: severityOf(fault),
      text,
      whatToDo: message('fitFasterExtender', { rates: ratesFor(fault) }),
      cautions: replacingCautions(context, true),
    };
  },
  label: (context, fault) => ({
    severity: severityOf(fault),
    text: message('cableCertificationUnseen', { cable: context.named, category: context.link.category }),
    whatToDo: message('findCertificationLabel'),
    cautions: replacingCautions(context),
  }),
  rateUnknown: ({ named: cable }) =>
    look(message('extenderRateUnknown', { cable }), message('lookUpExtenderRate')),
  categoryUnknown,
});

/** A category that nobody knows is worth a look, whatever is wanted today. */
function certification(context: LinkContext): Observation[] {
  const { link } = context;
  const found = ofCertification(context);
  if (found.length > 0 || faultOf(context) !== undefined) return found;
  const hasCategory = link.category !== 'unknown' || link.rated !== undefined;
  return hasCategory || link.construction === 'twistedPairExtender' ? [] : [categoryUnknown(context)];
}

const longLength = ruleFor({
  length: (context, fault) => {
    const { link, named: cable } = context;
    const { construction, lengthM: length } = link;
    const { reachM: reach } = fault.shortfall;
    if (construction === 'twistedPairExtender')
      return {
        severity: severityOf(fault),
        text: message('extenderTooLong', { cable, length, reach }),
        whatToDo: message('replaceTwistedPair'),
        cautions: replacingCautions(context, true),
      };
    const text = message('cableTooLongFor', { cable, construction, length, reach, rate: fault.needGbps });
    return { severity: severityOf(fault), text, ...another(context, fault) };
  },
  labelOfLong: (context, fault) => {
    const { link, named: cable } = context;
    return {
      severity: severityOf(fault),
      text: message('cableLongForItsLabel', { cable, category: link.category, length: link.lengthM }),
      whatToDo: message('scanLabelAgain'),
      cautions: pluggingCautions(context),
    };
  },
});

const endsOfCopper = ruleFor({
  ends: replace(({ named: cable }) => message('cableEndsFittedOnSite', { cable })),
});

function factoryEnds(context: LinkContext): Observation[] {
  const { link, named: cable } = context;
  if (link.construction !== 'activeOptical') return endsOfCopper(context);
  if (link.factoryFittedEnds === true) return [];
  if (link.factoryFittedEnds === null)
    return [
      {
        ...look(message('cableEndsUnknown', { cable }), message('lookAtBothEnds')),
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

const couplers = ruleFor({
  couplers: (context, fault) => {
    const { link, named: cable } = context;
    const isPassive = link.construction === 'passiveCopper';
    return {
      severity: severityOf(fault),
      text: isPassive
        ? message('cableOnCouplers', { cable, couplers: link.couplers ?? 0 })
        : message('activeCableOnCouplers', { cable, construction: link.construction }),
      whatToDo: message('layInOnePiece'),
      cautions: replacingCautions(context),
    };
  },
});

/** Whether each cable passes what is asked of it, by the link budget's own reckoning; one finding a cable. */
export const capacityRules: readonly Rule<LinkContext>[] = [
  { id: 'certification', source: message('cableCategories'), urgentFor: [], check: certification },
  { id: 'length-long', source: commonPractice, urgentFor: [], check: longLength },
  { id: 'factory-fitted-ends', source: commonPractice, urgentFor: [], check: factoryEnds },
  { id: 'couplers', source: commonPractice, urgentFor: [], check: couplers },
];
