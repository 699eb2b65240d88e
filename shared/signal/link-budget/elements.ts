import { bitRateGbps } from '../../chain/signal-mode.ts';
import type { Place, Port } from '../../contract/chain.ts';
import type { Message } from '../../message/index.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import { cableCapacity } from './cable.ts';
import { type Capacity, leastOf, modeCapacity } from './capacity.ts';
import type { EdidOffer } from './edid-offer.ts';
import type { Run } from './wiring.ts';

/** What can limit a link. */
export type ElementKind = 'cable' | 'edid' | 'sourcePort' | 'sinkPort';

/** One of the things a signal has to get through on a link. */
export type LinkElement = {
  kind: ElementKind;
  place: Place;
  /** By its label or highest mode. */
  rated: Capacity;
  /** What can be counted on. */
  sure: Capacity;
  /** Why that is less than rated, as clauses; empty when it isn't. Each is assumed. */
  doubts: Message[];
  /** A port that is set to less than it can do. */
  setBelowHighest: boolean;
};

/** The elements of a run, the likeliest culprit first; without the EDID where it isn't known. */
export function elementsOf(run: Run, offer: EdidOffer | null, assumptions: BudgetAssumptions): LinkElement[] {
  const { source, output, sink, input, link, cableLinkId } = run;
  const sourceAt: Place = { kind: 'port', deviceId: source.id, portId: output.id };
  const sinkAt: Place = { kind: 'port', deviceId: sink.id, portId: input.id };
  return [
    {
      kind: 'cable',
      place: { kind: 'link', linkId: cableLinkId },
      ...cableCapacity(link, assumptions),
      setBelowHighest: false,
    },
    ...(offer === null ? [] : [edidElement(sourceAt, offer)]),
    { kind: 'sourcePort', place: sourceAt, ...portCapacity(output) },
    { kind: 'sinkPort', place: sinkAt, ...portCapacity(input) },
  ];
}

function edidElement(place: Place, { tmdsMHz, frl }: EdidOffer): LinkElement {
  const admitted = { tmdsMHz, frl };
  return { kind: 'edid', place, rated: admitted, sure: admitted, doubts: [], setBelowHighest: false };
}

/** A socket passes no more than it can, whatever it is said to be set to. */
function portCapacity({ highestMode, setMode }: Port) {
  const passed = leastOf([modeCapacity(highestMode), modeCapacity(setMode ?? highestMode)]);
  const setBelowHighest = setMode !== null && bitRateGbps(setMode) < bitRateGbps(highestMode);
  return { rated: passed, sure: passed, doubts: [], setBelowHighest };
}
