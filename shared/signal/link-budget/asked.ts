import { downstreamOf, upstreamOf } from '../../chain/graph.ts';
import type { Chain, Device, Port, WantedFormat } from '../../contract/chain.ts';
import { formatNeed } from '../format/index.ts';
import { modeCapacity } from './capacity.ts';
import { wayOver } from './verdict.ts';
import { type Wiring, wiringOf } from './wiring.ts';

/**
 * The runs, by id, that a wanted format is asked of: those on a way from a source that it is wanted of to a display that
 * it is wanted on.
 *
 * Where the record names neither, it is asked of every source and display that a socket of can pass it at all: a disc
 * player isn't asked for what only the console beside it sends. Where none can, of all.
 */
export function askedOf({ chain, runs }: Wiring, wanted: WantedFormat): ReadonlySet<string> {
  const { sourceIds, displayIds } = wanted;
  const passes = passing(wanted);
  const fed = new Set(runs.map(({ sink }) => sink.id));
  const feeding = new Set(runs.map(({ source }) => source.id));
  const starts = runs.filter(({ source }) => !fed.has(source.id));
  const ends = runs.filter(({ sink }) => !feeding.has(sink.id));
  const from = chosen(
    starts.map(({ source }) => source),
    sourceIds,
    (device) => passes(device, 'output'),
  );
  const to = chosen(
    ends.map(({ sink }) => sink),
    displayIds,
    (device) => passes(device, 'input'),
  );
  const reached = new Set(from.flatMap((id) => [id, ...downstreamOf(chain, id)]));
  const leading = new Set(to.flatMap((id) => [id, ...upstreamOf(chain, id)]));
  const asked = runs.filter(({ source, sink }) => reached.has(source.id) && leading.has(sink.id));
  const isNamed = (sourceIds?.length ?? 0) + (displayIds?.length ?? 0) > 0;
  // A loop has neither start nor end; and where nothing able feeds anything able, it is asked of all.
  return new Set((asked.length > 0 || isNamed ? asked : runs).map(({ link }) => link.id));
}

/** A wanted format with what it is asked of. */
export type AskedRuns = {
  format: WantedFormat;
  linkIds: ReadonlySet<string>;
  /** Devices that the asked links start from, and go into. */
  sourceIds: ReadonlySet<string>;
  displayIds: ReadonlySet<string>;
};

/** What each wanted format of a chain is asked of, in the chain's order. */
export function askedRuns(chain: Chain): AskedRuns[] {
  const wiring = wiringOf(chain);
  return chain.wantedFormats.map((format) => {
    const linkIds = askedOf(wiring, format);
    const runs = wiring.runs.filter(({ link }) => linkIds.has(link.id));
    const sourceIds = new Set(runs.map(({ source }) => source.id));
    return { format, linkIds, sourceIds, displayIds: new Set(runs.map(({ sink }) => sink.id)) };
  });
}

function chosen(
  devices: readonly Device[],
  ids: string[] | undefined,
  passes: (device: Device) => boolean,
): string[] {
  if (ids !== undefined && ids.length > 0) return ids;
  const able = devices.filter(passes);
  return [...new Set((able.length > 0 ? able : devices).map(({ id }) => id))];
}

function passing(wanted: WantedFormat): (device: Device, direction: Port['direction']) => boolean {
  const need = formatNeed(wanted);
  return ({ ports }, direction) =>
    ports.some(
      (port) => port.direction === direction && wayOver(need, modeCapacity(port.highestMode)) !== null,
    );
}
