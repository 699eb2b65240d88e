import { linkEnds, linksInto, linksOutOf, upstreamOf } from '../../chain/graph.ts';
import type { LinkEnds } from '../../chain/look-up.ts';
import type { Chain, Link } from '../../contract/chain.ts';

/** One cable between two ports, as it lies or as it would lie with a device taken out. */
export type Run = LinkEnds & {
  /** The link's own id; of a run that stands for two, both ids with a plus sign. */
  id: string;
  linkIds: string[];
  cable: Link;
};

export type Wiring = {
  runs: Run[];
  /** Devices whose readings no longer say what they would see, since what follows them has changed. */
  staleReadings: ReadonlySet<string>;
};

/** The chain's links as they lie; links with an end that isn't there are left out. */
export function wiringOf(chain: Chain): Wiring {
  const runs = chain.links.flatMap((link): Run[] => {
    const ends = linkEnds(chain, link);
    return ends === null ? [] : [{ ...ends, id: link.id, linkIds: [link.id], cable: link }];
  });
  return { runs, staleReadings: new Set() };
}

/**
 * The chain with one device taken out: whatever fed it joined straight to whatever it fed, by the longer of the two
 * cables, since the other wouldn't reach (assumed). With several inputs or outputs every pair is a run of its own,
 * to be looked at one at a time.
 */
export function wiringWithout(chain: Chain, deviceId: string): Wiring {
  const whole = wiringOf(chain);
  const touches = ({ source, sink }: Run): boolean => source.id === deviceId || sink.id === deviceId;
  const run = (link: Link): Run | undefined => whole.runs.find((each) => each.cable === link);
  const joined = linksInto(chain, deviceId).flatMap((link) =>
    linksOutOf(chain, deviceId).flatMap((next): Run[] => {
      const [into, out] = [run(link), run(next)];
      return into && out ? [joinRuns(into, out)] : [];
    }),
  );
  return {
    runs: [...whole.runs.filter((each) => !touches(each)), ...joined],
    staleReadings: upstreamOf(chain, deviceId),
  };
}

function joinRuns(into: Run, out: Run): Run {
  const { cable } = into.cable.lengthM > out.cable.lengthM ? into : out;
  return {
    source: into.source,
    output: into.output,
    sink: out.sink,
    input: out.input,
    id: `${into.id}+${out.id}`,
    linkIds: [into.id, out.id],
    cable,
  };
}
