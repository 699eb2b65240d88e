import { linksInto, linksOutOf, upstreamOf } from '../../chain/graph.ts';
import { type LinkEnds, linkEnds } from '../../chain/look-up.ts';
import type { Chain, Link } from '../../contract/chain.ts';

/** One cable between two ports, as it lies or as it would lie with a device taken out. */
export type Run = LinkEnds & {
  /** Its own link; of a run that stands for two, one with both ids, joined by a plus sign, and the cable's facts. */
  link: Link;
  linkIds: string[];
  /** The link whose cable is counted. */
  cableLinkId: string;
};

export type Wiring = {
  /** The chain with its links as the runs have them. */
  chain: Chain;
  runs: Run[];
  /** Devices whose readings no longer say what they would see, since what follows them has changed. */
  staleReadings: ReadonlySet<string>;
};

type Standing = Pick<Run, 'link' | 'linkIds' | 'cableLinkId'>;

const itself = (link: Link): Standing => ({ link, linkIds: [link.id], cableLinkId: link.id });

/** The chain's links as they lie; links with an end that isn't there make no run. */
export const wiringOf = (chain: Chain): Wiring => wiring(chain, chain.links.map(itself), new Set());

/**
 * The chain with one device taken out: whatever fed it joined straight to whatever it fed, by the longer of the two
 * cables, since the other wouldn't reach (assumed). With several inputs or outputs every pair is a run of its own,
 * to be looked at one at a time.
 */
export function wiringWithout(chain: Chain, deviceId: string): Wiring {
  const joined = linksInto(chain, deviceId).flatMap((into) =>
    linksOutOf(chain, deviceId).map((out) => join(into, out)),
  );
  const untouched = chain.links.filter(
    ({ from, to }) => from.deviceId !== deviceId && to.deviceId !== deviceId,
  );
  return wiring(
    { ...chain, devices: chain.devices.filter(({ id }) => id !== deviceId) },
    [...untouched.map(itself), ...joined],
    upstreamOf(chain, deviceId),
  );
}

function join(into: Link, out: Link): Standing {
  const cable = into.lengthM > out.lengthM ? into : out;
  return {
    link: { ...cable, id: `${into.id}+${out.id}`, from: into.from, to: out.to },
    linkIds: [into.id, out.id],
    cableLinkId: cable.id,
  };
}

function wiring(chain: Chain, standing: readonly Standing[], staleReadings: ReadonlySet<string>): Wiring {
  const runs = standing.flatMap((each): Run[] => {
    const ends = linkEnds(chain, each.link);
    return ends === null ? [] : [{ ...ends, ...each }];
  });
  return { chain: { ...chain, links: runs.map(({ link }) => link) }, runs, staleReadings };
}
