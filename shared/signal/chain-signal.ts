import { displaysOf } from '../chain/graph.ts';
import type { Chain, VideoFormat } from '../contract/chain.ts';
import { cablesBehindVersionMessage, chainProtection } from './content-protection/index.ts';
import { type BudgetAssumptions, chainBudget, type LinkBudget, shownHex } from './link-budget/index.ts';
import { type PowerAssumptions, powerBudget } from './power.ts';
import { returnAudioOf } from './return-audio.ts';

/** An organisation's own figures; the usual ones where it set none. */
export type SignalFigures = {
  readonly budget?: Partial<BudgetAssumptions>;
  readonly cableDrawMa?: Partial<PowerAssumptions>;
};

export type ChainSignal = ReturnType<typeof chainSignal>;

/**
 * All that is computed of what a chain's signal can and cannot do: link budget, content protection, return audio, and
 * the 5 V lines.
 *
 * @param wanted the formats to judge; those that the chain's record wants, where none are named
 */
export function chainSignal(
  chain: Chain,
  figures: SignalFigures,
  wanted: readonly VideoFormat[] = chain.wantedFormats,
) {
  const budget = chainBudget(chain, wanted, { assumptions: figures.budget ?? {} });
  return {
    budget: { ...budget, links: budget.links.map(withShownEdid) },
    contentProtection: { ...chainProtection(chain), ifADisplaySeemsTooOld: suspectCables(chain) },
    returnAudio: returnAudioOf(chain),
    power: powerBudget(chain, figures.cableDrawMa),
  };
}

/** The limits on an EDID's way worked into its bytes. */
function withShownEdid(link: LinkBudget) {
  const { limits, ...seen } = link.seen;
  return { ...link, seen: { ...seen, edidHex: shownHex(link.seen) } };
}

/** For each display: the cables to suspect when a message says it lacks a version that its data sheet has. */
const suspectCables = (chain: Chain) =>
  displaysOf(chain).map(({ id }) => ({ displayId: id, cables: cablesBehindVersionMessage(chain, id) }));
