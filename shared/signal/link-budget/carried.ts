import { signalOrder } from '../../chain/graph.ts';
import type { Device, VideoFormat } from '../../contract/chain.ts';
import { converts, plainly } from './losses.ts';
import type { Wiring } from './wiring.ts';

/** What a run can have on it: what a source sends as wanted, and what devices before it make of the picture. */
export type Carried = {
  wanted: boolean;
  /** The wanted format comes with all that was asked for: nothing on its way converts it. */
  asAsked: boolean;
  made: VideoFormat[];
};

/**
 * For each run, by its id, whether the wanted format reaches it as it is, and which formats devices on the way send
 * in its place. A device with an output format of its own sends that whatever it receives.
 */
export function carriedBy({ chain, runs }: Wiring): ReadonlyMap<string, Carried> {
  const carried = new Map<string, Carried>();
  for (const deviceId of signalOrder(chain)) {
    const leaving = runs.filter((run) => run.source.id === deviceId);
    const received = runs
      .filter((run) => run.sink.id === deviceId)
      .flatMap((run) => carried.get(run.link.id) ?? []);
    for (const run of leaving) carried.set(run.link.id, sentOn(run.source, received));
  }
  return carried;
}

function sentOn(device: Device, received: readonly Carried[]): Carried {
  const { outputFormat: own } = device;
  if (own !== null) return { wanted: false, asAsked: false, made: [own] };
  if (received.length === 0) return { wanted: true, asAsked: true, made: [] };
  const isConverted = converts(device);
  const made = received.flatMap((each) => (isConverted ? each.made.map(plainly) : each.made));
  const asAsked = !isConverted && received.some((each) => each.wanted && each.asAsked);
  return { wanted: received.some((each) => each.wanted), asAsked, made: [...new Set(made)] };
}
