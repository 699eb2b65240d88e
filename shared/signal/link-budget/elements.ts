import { bitRateGbps } from '../../chain/signal-mode.ts';
import type { Place, Port, SignalMode } from '../../contract/chain.ts';
import { maxTmdsCharacterRateMHz } from '../format/index.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import { cableCapacity } from './cable.ts';
import type { Capacity } from './capacity.ts';
import type { EdidOffer } from './edid-offer.ts';
import type { Run } from './wiring.ts';

/** What can limit a link. The order settles which one is named when several limit alike. */
export const elementKinds = ['cable', 'edid', 'sourcePort', 'sinkPort'] as const;
export type ElementKind = (typeof elementKinds)[number];

/** One of the things a signal has to get through on a link. */
export type LinkElement = {
  kind: ElementKind;
  place: Place;
  /** By its label or highest mode. */
  rated: Capacity;
  /** What can be counted on. */
  sure: Capacity;
  /** Why that is less than rated, as clauses; empty when it isn't. Each is assumed. */
  doubts: string[];
  /** A port that is set to less than it can do. */
  setBelowHighest: boolean;
};

/** The elements of a run; without the EDID where it isn't known. */
export function elementsOf(run: Run, offer: EdidOffer | null, assumptions: BudgetAssumptions): LinkElement[] {
  const { source, output, sink: device, input, cable } = run;
  const at = (deviceId: string, port: Port): Place => ({ kind: 'port', deviceId, portId: port.id });
  const elements: LinkElement[] = [
    {
      kind: 'cable',
      place: { kind: 'link', linkId: cable.id },
      ...cableCapacity(cable, assumptions),
      setBelowHighest: false,
    },
    { kind: 'sourcePort', place: at(source.id, output), ...portCapacity(output) },
    { kind: 'sinkPort', place: at(device.id, input), ...portCapacity(input) },
  ];
  if (offer === null) return elements;
  const { tmdsMHz, frl } = offer;
  const offered = { tmdsMHz, frl };
  return [
    ...elements,
    {
      kind: 'edid',
      place: at(source.id, output),
      rated: offered,
      sure: offered,
      doubts: [],
      setBelowHighest: false,
    },
  ];
}

function portCapacity({ highestMode, setMode }: Port) {
  const passed = modeCapacity(setMode ?? highestMode);
  const setBelowHighest = setMode !== null && bitRateGbps(setMode) < bitRateGbps(highestMode);
  return { rated: passed, sure: passed, doubts: [], setBelowHighest };
}

/** A fixed rate port still takes TMDS, at up to its full rate (HDMI 2.1, from memory). */
function modeCapacity(mode: SignalMode): Capacity {
  if (mode.kind === 'tmds') return { tmdsMHz: mode.maxCharacterRateMHz, frl: null };
  return {
    tmdsMHz: maxTmdsCharacterRateMHz,
    frl: { lanes: mode.lanes, gbpsPerLane: mode.gbpsPerLane },
  };
}
