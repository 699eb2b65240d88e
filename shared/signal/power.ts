import { linkEnds } from '../chain/graph.ts';
import { namedDevice, namedLink } from '../chain/named-place.ts';
import type { Chain, Device, Link, LinkConstruction, Port } from '../contract/chain.ts';
import { organisationDefaults } from '../contract/defaults.ts';
import { type Message, message } from '../message/index.ts';

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
  sentence: Message;
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
  const isFed = [sourceEnd, sinkEnd].some((end) => end.needsPower && end.powered === 'yes');
  if (isFed) return { ma: 0, basis: 'ownSupply' };
  if (drawMa !== null) return { ma: drawMa, basis: 'recorded' };
  return { ma: draws[construction], basis: construction === 'passiveCopper' ? 'standard' : 'assumed' };
}

type WithoutSentence = Omit<LinkPower, 'sentence'>;

function sentenceOf(chain: Chain, link: Link, ends: Ends, figures: WithoutSentence): Message {
  const { balanceMa, verdict, opticalOnSource } = figures;
  const budget = message('fiveVoltBudget', {
    supply: supplied(chain, ends, figures),
    sink: taken(chain, ends, figures),
    cable: takenByCable(link, figures),
    balance:
      balanceMa >= 0
        ? message('currentToSpare', { left: balanceMa })
        : message('currentShort', { short: -balanceMa }),
  });
  if (verdict === 'enough') return budget;
  return opticalOnSource
    ? message('fiveVoltOpticalOnSource', { budget, offered: cablePowerSupplyMa })
    : message('fiveVoltFallsShort', { budget, cable: namedLink(chain, link) });
}

function supplied(chain: Chain, { source }: Ends, { supply }: WithoutSentence): Message {
  const values = { source: namedDevice(chain, source.id), supply: supply.ma };
  return supply.basis === 'standard' ? message('suppliesAtLeast', values) : message('supplies', values);
}

function taken(chain: Chain, { sink }: Ends, { sink: figure }: WithoutSentence): Message {
  const values = { sink: namedDevice(chain, sink.id), draw: figure.ma };
  return figure.basis === 'standard' ? message('mayTake', values) : message('takes', values);
}

function takenByCable({ construction }: Link, { cable }: WithoutSentence): Message {
  switch (cable.basis) {
    case 'recorded':
      return message('cableTakes', { draw: cable.ma });
    case 'assumed':
      return message('cableTakesAbout', { construction, draw: cable.ma });
    case 'ownSupply':
      return message('cableHasOwnSupply');
    case 'standard':
      return message('cableTakesNothing');
  }
}
