import { signalOrder } from '../../chain/graph.ts';
import type { VideoFormat } from '../../contract/chain.ts';
import type { Wiring } from './wiring.ts';

/** What a run can have on it: what a source sends as wanted, and what devices before it make of the picture. */
export type Carried = { wanted: boolean; made: VideoFormat[] };

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
    for (const run of leaving) carried.set(run.link.id, sentOn(run.source.outputFormat, received));
  }
  return carried;
}

function sentOn(own: VideoFormat | null, received: readonly Carried[]): Carried {
  if (own !== null) return { wanted: false, made: [own] };
  if (received.length === 0) return { wanted: true, made: [] };
  const made = new Set(received.flatMap((each) => each.made));
  return { wanted: received.some((each) => each.wanted), made: [...made] };
}
