import { downstreamOf, linksOutOf, sourcesOf } from '../../chain/graph.ts';
import { namedDevice, namedPlace } from '../../chain/named-place.ts';
import type { Chain } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import type { Hop } from './hop.ts';

/** How much may hang behind the first device after a source, as that device counts it. */
export type TopologyLimit = { devices: number; levels: number; source: Message };

/** 1.x: HDCP 1.4, clause 2.2.3, device count of 7 bits and depth of 3 (from memory). */
export const limitsOf1x: TopologyLimit = {
  devices: 127,
  levels: 7,
  source: message('standardFromMemory', { standard: 'HDCP 1.4', clause: '2.2' }),
};
/** 2.x: HDCP 2.2 on HDMI, clause 2.5, 31 devices and 4 levels (from memory). */
export const limitsOf2x: TopologyLimit = {
  devices: 31,
  levels: 4,
  source: message('standardFromMemory', { standard: 'HDCP 2.2 on HDMI', clause: '2.5' }),
};

export type SourceTopology = {
  sourceId: string;
  /** The link out of the source whose first device counts. */
  linkId: string;
  /** Devices behind the first one, itself not counted. */
  devices: number;
  /** Links on the longest way behind it. */
  levels: number;
  limit: TopologyLimit;
  within: boolean;
  sentence: Message;
};

/**
 * For each link out of a source, what hangs behind the first device, against what the version of that hop allows;
 * where the version isn't known, against the stricter 2.x. Every device is counted: one that only passes the signal
 * through isn't, so that the true count may be lower (assumed).
 */
export function topologyOf(chain: Chain, hops: readonly Hop[]): SourceTopology[] {
  return sourcesOf(chain).flatMap((source) =>
    linksOutOf(chain, source.id).map((link): SourceTopology => {
      const first = link.to.deviceId;
      const devices = downstreamOf(chain, first).size;
      const levels = levelsBehind(chain, first, new Set([source.id]));
      const version = hops.find((hop) => hop.linkId === link.id)?.version;
      const limit = version === '1.4' ? limitsOf1x : limitsOf2x;
      const within = devices <= limit.devices && levels <= limit.levels;
      const sentence = message(within ? 'behindSource' : 'tooMuchBehindSource', {
        source: namedDevice(chain, source.id),
        first: namedPlace(chain, { kind: 'device', deviceId: first }),
        devices,
        levels,
        allowedDevices: limit.devices,
        allowedLevels: limit.levels,
      });
      return { sourceId: source.id, linkId: link.id, devices, levels, limit, within, sentence };
    }),
  );
}

function levelsBehind(chain: Chain, deviceId: string, before: ReadonlySet<string>): number {
  const known = new Map<string, number>();
  const levels = (at: string, passed: ReadonlySet<string>): number => {
    const found = known.get(at);
    if (found !== undefined) return found;
    const next = linksOutOf(chain, at)
      .map((link) => link.to.deviceId)
      .filter((id) => !passed.has(id) && id !== at);
    const deepest = Math.max(0, ...next.map((id) => 1 + levels(id, new Set([...passed, at]))));
    known.set(at, deepest);
    return deepest;
  };
  return levels(deviceId, before);
}
