import { findLink, linkEnds } from '../chain/look-up.ts';
import { namedPlace } from '../chain/named-place.ts';
import type { Chain, Finding, Place, VideoFormat } from '../contract/chain.ts';
import { type Message, message } from '../message/index.ts';
import { chainProtection } from '../signal/content-protection/index.ts';
import {
  type BudgetAssumptions,
  chainBudget,
  type ElementKind,
  type WantedOnLink,
} from '../signal/link-budget/index.ts';
import { type PowerAssumptions, powerBudget } from '../signal/power.ts';
import { poweringCautions, replacingCautions } from './rules/cautions.ts';

export type SignalAssumptions = {
  budget?: Partial<BudgetAssumptions>;
  cableDrawMa?: Partial<PowerAssumptions>;
};

const severityOf = { short: 'mustFix', notOffered: 'shouldFix', doubtful: 'shouldFix' } as const;
/** For a link that can't carry a format, by what is narrowest on it. */
const whatToDo: Record<ElementKind, Message> = {
  cable: message('fitAnotherCable'),
  edid: message('readEdidAtBothEnds'),
  sourcePort: message('setOutputMode'),
  sinkPort: message('setInputMode'),
};

const linkAt = (linkId: string): Place => ({ kind: 'link', linkId });
const named = (chain: Chain, place: Place): Message =>
  message('thePlace', { place: namedPlace(chain, place) });

/**
 * What the computed budgets say against a chain, as findings of its audit: links that can't carry a wanted format, with
 * the figures; 5 V lines that fall short by the record; displays that protected content of today can't reach.
 * @param wanted formats to judge; none gives no finding on links
 */
export function signalFindings(
  chain: Chain,
  wanted: readonly VideoFormat[],
  assumptions: SignalAssumptions = {},
): Finding[] {
  return [
    ...linkFindings(chain, wanted, assumptions.budget ?? {}),
    ...powerFindings(chain, assumptions.cableDrawMa ?? {}),
    ...protectionFindings(chain),
  ];
}

function linkFindings(
  chain: Chain,
  wanted: readonly VideoFormat[],
  assumptions: Partial<BudgetAssumptions>,
): Finding[] {
  return chainBudget(chain, wanted, { assumptions }).links.flatMap((link) => {
    const worst = link.wanted.filter(isAgainst).sort(byWorst)[0];
    if (worst === undefined) return [];
    return [
      {
        rule: 'link-budget',
        severity: severityOf[worst.verdict],
        place: linkAt(link.cableLinkId),
        placeName: link.name,
        text: worst.sentence,
        ...remedyFor(chain, link.cableLinkId, worst),
        source: message('computedCapacity'),
      },
    ];
  });
}

function remedyFor(
  chain: Chain,
  cableLinkId: string,
  { verdict, figures }: Against,
): Pick<Finding, 'whatToDo' | 'cautions'> {
  if (figures === null) return { whatToDo: message('askForExistingFormat'), cautions: [] };
  const narrowest = verdict === 'notOffered' ? 'edid' : figures.narrowest;
  const cautions = narrowest === 'cable' ? cautionsAt(chain, cableLinkId, replacingCautions) : [];
  return { whatToDo: whatToDo[narrowest], cautions };
}

/** What work at that cable may hurt somebody with. */
function cautionsAt(chain: Chain, linkId: string, cautions: typeof poweringCautions): Message[] {
  const link = findLink(chain, linkId);
  const ends = link === undefined ? null : linkEnds(chain, link);
  return link === undefined || ends === null ? [] : cautions({ link, ends });
}

type Against = WantedOnLink & { verdict: keyof typeof severityOf };
const isAgainst = (one: WantedOnLink): one is Against => one.verdict !== 'fits';
const order: readonly Against['verdict'][] = ['short', 'notOffered', 'doubtful'];
/** Short before doubtful; of two alike, the one that is further off. */
const byWorst = (one: Against, other: Against): number =>
  order.indexOf(one.verdict) - order.indexOf(other.verdict) ||
  (one.figures?.headroomFraction ?? -1) - (other.figures?.headroomFraction ?? -1);

function powerFindings(chain: Chain, draws: Partial<PowerAssumptions>): Finding[] {
  return powerBudget(chain, draws)
    .filter((power) => power.verdict === 'short')
    .map((power) => ({
      rule: 'five-volt',
      severity: 'mustFix',
      place: linkAt(power.linkId),
      placeName: named(chain, linkAt(power.linkId)),
      text: power.sentence,
      whatToDo: message('powerCable'),
      source: message('standardFromMemory', { standard: 'HDMI 1.4b', clause: '4.2.7' }),
      cautions: cautionsAt(chain, power.linkId, poweringCautions),
    }));
}

function protectionFindings(chain: Chain): Finding[] {
  return chainProtection(chain, 'type1')
    .displays.filter((display) => display.shown === 'no')
    .map((display) => {
      const place: Place =
        display.linkId === null ? { kind: 'device', deviceId: display.displayId } : linkAt(display.linkId);
      return {
        rule: 'content-protection',
        severity: 'shouldFix',
        place,
        placeName: named(chain, place),
        text: display.sentence,
        whatToDo: message('findProtectionVersions'),
        source: message('streamTypeFromMemory'),
        cautions: [],
      };
    });
}
