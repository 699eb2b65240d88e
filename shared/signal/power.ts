import { linkEnds } from '../chain/graph.ts';
import { constructionNames } from '../chain/link-words.ts';
import { bareName, linkName } from '../chain/place.ts';
import type { Chain, Device, Link, LinkConstruction, Port } from '../contract/chain.ts';
import { organisationDefaults } from '../contract/defaults.ts';

/** What every source supplies on its 5 V line at least, mA. HDMI 1.4b, clause 4.2.7 (from memory). */
export const leastSourceSupplyMa = 55;
/** What a sink may draw at most, mA: this when it is off, 10 when it is on. HDMI 1.4b, clause 4.2.7 (from memory). */
export const mostSinkDrawMa = 50;
/** What a source supplies at least that offers power for cables, mA. HDMI 2.1a, cable power (from memory). */
export const cablePowerSupplyMa = 300;

/** What the electronics of a cable take from the 5 V line where its record doesn't say, mA. */
export type PowerAssumptions = Record<LinkConstruction, number>;

/** Where a figure is from: the record, the standard's limit, a supply of the cable's own, or assumed. */
export type PowerBasis = 'recorded' | 'standard' | 'ownSupply' | 'assumed';
export type PowerFigure = { ma: number; basis: PowerBasis };

export type LinkPower = {
  linkId: string;
  /** What the source end supplies; at least, where the basis is the standard. */
  supply: PowerFigure;
  /** What the sink end draws; at most, where the basis is the standard. */
  sink: PowerFigure;
  cable: PowerFigure;
  /** Left over; below zero what is missing. */
  balanceMa: number;
  /** `short`: by the record. `risk`: if the source gives no more than it must, or the cable takes what is assumed. */
  verdict: 'enough' | 'risk' | 'short';
  /** The cable is an optical one and hangs on a source of programmes directly. */
  opticalOnSource: boolean;
  sentence: string;
};

/**
 * The 5 V budget of each link: what the source end gives, the sink end takes, and the cable's electronics take, in mA.
 * Links with an end that isn't there are left out. Sources: HDMI 1.4b 4.2.7, HDMI 2.1a; draws of cables are assumed
 * where the record has none.
 */
export function powerBudget(chain: Chain, assumptions: Partial<PowerAssumptions> = {}): LinkPower[] {
  const draws = { ...organisationDefaults.cableDrawMa, ...assumptions };
  return chain.links.flatMap((link) => {
    const ends = linkEnds(chain, link);
    return ends === null ? [] : [linkPower(chain, link, ends, draws)];
  });
}

type Ends = { source: Device; output: Port; sink: Device; input: Port };

function linkPower(chain: Chain, link: Link, ends: Ends, draws: PowerAssumptions): LinkPower {
  const supply = recordedOr(ends.output.fiveVoltMa, leastSourceSupplyMa);
  const sink = recordedOr(ends.input.fiveVoltMa, mostSinkDrawMa);
  const cable = cableDraw(link, draws);
  const balanceMa = supply.ma - sink.ma - cable.ma;
  const recorded = [supply, sink, cable].every(({ basis }) => basis === 'recorded' || basis === 'ownSupply');
  const verdict = balanceMa >= 0 ? 'enough' : recorded ? 'short' : 'risk';
  const opticalOnSource = link.construction === 'activeOptical' && ends.source.role === 'source';
  const figures = { linkId: link.id, supply, sink, cable, balanceMa, verdict, opticalOnSource } as const;
  return { ...figures, sentence: sentenceOf(chain, link, ends, figures) };
}

const recordedOr = (recorded: number | null, standardMa: number): PowerFigure =>
  recorded === null ? { ma: standardMa, basis: 'standard' } : { ma: recorded, basis: 'recorded' };

function cableDraw({ construction, drawMa, sourceEnd, sinkEnd }: Link, draws: PowerAssumptions): PowerFigure {
  if (drawMa !== null) return { ma: drawMa, basis: 'recorded' };
  const powered = [sourceEnd, sinkEnd].some((end) => end.needsPower && end.powered === 'yes');
  if (powered) return { ma: 0, basis: 'ownSupply' };
  return { ma: draws[construction], basis: construction === 'passiveCopper' ? 'standard' : 'assumed' };
}

function sentenceOf(chain: Chain, link: Link, ends: Ends, figures: Omit<LinkPower, 'sentence'>): string {
  const { supply, sink, cable, balanceMa, verdict, opticalOnSource } = figures;
  const gives =
    supply.basis === 'standard'
      ? `${bareName(chain, ends.source.id)} has to supply ${supply.ma} mA at 5 V and no more`
      : `${bareName(chain, ends.source.id)} supplies ${supply.ma} mA at 5 V`;
  const takes = `${bareName(chain, ends.sink.id)} ${sink.basis === 'standard' ? 'may take up to' : 'takes'} ${sink.ma}`;
  const kind = constructionNames[link.construction];
  const name = `${startsWithVowel(kind) ? 'an' : 'a'} ${kind} cable`;
  const spends = {
    recorded: `the cable takes ${cable.ma}`,
    assumed: `${name} takes about ${cable.ma} (assumed)`,
    ownSupply: 'the cable has a supply of its own',
    standard: 'the cable takes nothing',
  }[cable.basis];
  const left = balanceMa >= 0 ? `${balanceMa} mA to spare` : `${-balanceMa} mA short`;
  const sum = `${gives}, ${takes}, ${spends}: ${left}.`;
  if (verdict === 'enough') return sum;
  const remedy = opticalOnSource
    ? `Start-up is when it shows: no picture, or one that drops out. Power the cable at an end that takes power, or use passive copper from the source to the next device; a source that offers power for cables supplies ${cablePowerSupplyMa} mA.`
    : `Power ${linkName(chain, link)} at an end that takes power, or measure what the source supplies.`;
  return `${sum} ${remedy}`;
}

const startsWithVowel = (text: string): boolean => /^[aeiou]/.test(text);
