import { findLink, linkEnds } from '../chain/look-up.ts';
import { placeName } from '../chain/place.ts';
import type { Chain, Finding, Place, VideoFormat } from '../contract/chain.ts';
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
const whatToDo: Record<ElementKind, string> = {
  cable: 'Replace the cable by one certified for the rate, or ask for a format that fits.',
  edid: 'Read the EDID at the source and at the display, and see who changes it on the way.',
  sourcePort: 'Set the output to the mode that passes it, use one that does, or ask for a format that fits.',
  sinkPort: 'Set the input to the mode that passes it, use one that does, or ask for a format that fits.',
};
const noWay = 'Ask for a format that exists: there is none with this sampling and these bits.';

const linkAt = (linkId: string): Place => ({ kind: 'link', linkId });

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
        source: "computed: HDMI character rates and the fixed rate link's capacity; what is assumed is named",
      },
    ];
  });
}

function remedyFor(
  chain: Chain,
  cableLinkId: string,
  { verdict, figures }: Against,
): Pick<Finding, 'whatToDo' | 'caution'> {
  if (figures === null) return { whatToDo: noWay, caution: null };
  const narrowest = verdict === 'notOffered' ? 'edid' : figures.narrowest;
  const caution = narrowest === 'cable' ? cautionAt(chain, cableLinkId, replacingCautions) : null;
  return { whatToDo: whatToDo[narrowest], caution };
}

/** What work at that cable may hurt somebody with; null when nothing. */
function cautionAt(chain: Chain, linkId: string, cautions: typeof poweringCautions): string | null {
  const link = findLink(chain, linkId);
  const ends = link === undefined ? null : linkEnds(chain, link);
  if (link === undefined || ends === null) return null;
  return cautions({ link, ends }).join(' ') || null;
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
      placeName: placeName(chain, linkAt(power.linkId)),
      text: power.sentence,
      whatToDo:
        'Power the cable at the end its maker names, or put a switch with a supply of its own before it.',
      source: 'HDMI 1.4b, clause 4.2.7 (from memory)',
      caution: cautionAt(chain, power.linkId, poweringCautions),
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
        placeName: placeName(chain, place),
        text: display.sentence,
        whatToDo:
          'Find out which version each end does, set it where it can be set, or leave the older device out.',
        source: 'HDCP 2.2 on HDMI, stream type (from memory)',
        caution: null,
      };
    });
}
