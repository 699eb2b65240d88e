import type { Device } from '../../contract/chain.ts';
import type { EdidLimits } from '../edid/index.ts';
import { common, type EdidOffer, edidLimitsOf, limitedOffer, readingOnce } from './edid-offer.ts';
import type { Run, Wiring } from './wiring.ts';

/** What was done to an EDID on its way from the display to the output that sees it. */
export type EdidHand = {
  deviceId: string;
  /**
   * `answers`: with its own, as displays do. `read`: a reading was taken at a port of it. `combines`: what all its
   * outputs in use have in common.
   */
  did: 'answers' | 'read' | 'passesOn' | 'limits' | 'replaces' | 'combines';
};

export type SeenEdid = {
  /** Null when nothing is known. */
  offer: EdidOffer | null;
  /** The bytes as they were recorded; null where several EDIDs were put together, or nothing is known. */
  edidHex: string | null;
  /** What devices on the way took away from it, one after the other; `shownHex` says the bytes that are left. */
  limits: readonly EdidLimits[];
  hands: EdidHand[];
};

/** Nothing known. */
export const unknownEdid: SeenEdid = { offer: null, edidHex: null, limits: [], hands: [] };

/**
 * The EDID that the output of each run sees, by the run's id.
 *
 * A display answers with the EDID at its input. A device in between presents what its handling makes of what its
 * outputs see: passed on, limited, or replaced by its own. A reading taken at a port comes before what would be
 * worked out for a device that passes on, since it is what was there; but a declared limit still applies to it, and a
 * declared replacement goes before it. Readings that the wiring calls stale don't count; nor is anything known before
 * a device that replaces the EDID with one that was never read.
 */
export function seenEdids({ runs, staleReadings }: Wiring): ReadonlyMap<string, SeenEdid> {
  const read = readingOnce();
  const seen = new Map<string, SeenEdid>();
  const opened = new Set<string>();

  const readAt = (device: Device, edidHex: string | null): SeenEdid | null =>
    edidHex === null
      ? null
      : { offer: read(edidHex), edidHex, limits: [], hands: [{ deviceId: device.id, did: 'read' }] };
  const freshAt = (device: Device, edidHex: string | null): SeenEdid | null =>
    staleReadings.has(device.id) ? null : readAt(device, edidHex);

  const seenBy = (run: Run): SeenEdid => {
    const known = seen.get(run.link.id);
    if (known !== undefined) return known;
    // A loop, which a stored chain hasn't, ends here.
    if (opened.has(run.link.id)) return unknownEdid;
    opened.add(run.link.id);
    const found = atOutput(run);
    seen.set(run.link.id, found);
    return found;
  };

  const atOutput = (run: Run): SeenEdid => {
    const readHere = freshAt(run.source, run.output.edidHex);
    const handling = run.sink.edidHandling;
    const replaced = handling.kind === 'replaces' && handling.edidHex !== null;
    if (readHere === null || replaced) return presented(run);
    return handling.kind === 'limits' ? handled(run.sink, readHere) : readHere;
  };

  /** What the device at the end of a run presents at its input. */
  const presented = ({ sink, input }: Run): SeenEdid => {
    const outputs = runs.filter((run) => run.source.id === sink.id);
    if (outputs.length === 0) return answer(sink, staleReadings.has(sink.id) ? null : input.edidHex);
    // Its own EDID is the same whatever follows it; one that nobody recorded hides what follows.
    if (sink.edidHandling.kind === 'replaces')
      return handled(sink, readAt(sink, input.edidHex) ?? unknownEdid);
    return handled(sink, freshAt(sink, input.edidHex) ?? combined(sink, outputs.map(seenBy)));
  };

  const answer = (device: Device, edidHex: string | null): SeenEdid =>
    handled(
      device,
      edidHex === null
        ? unknownEdid
        : { offer: read(edidHex), edidHex, limits: [], hands: [{ deviceId: device.id, did: 'answers' }] },
    );

  const handled = (device: Device, given: SeenEdid): SeenEdid => {
    const handling = device.edidHandling;
    const hand = (did: EdidHand['did']): EdidHand[] => [...given.hands, { deviceId: device.id, did }];
    switch (handling.kind) {
      case 'passesOn':
        return given.hands.some(({ deviceId }) => deviceId === device.id)
          ? given
          : { ...given, hands: given.offer === null ? [] : hand('passesOn') };
      case 'limits': {
        if (given.offer === null) return given;
        const { edidHex } = given;
        const limits = [...given.limits, edidLimitsOf(handling)];
        const offer = edidHex === null ? limitedOffer(given.offer, handling) : read(edidHex, limits);
        return { offer, edidHex, limits, hands: hand('limits') };
      }
      case 'replaces':
        return handling.edidHex === null
          ? given
          : {
              offer: read(handling.edidHex),
              edidHex: handling.edidHex,
              limits: [],
              hands: [{ deviceId: device.id, did: 'replaces' }],
            };
    }
  };

  for (const run of runs) seenBy(run);
  return seen;
}

function combined(device: Device, seen: readonly SeenEdid[]): SeenEdid {
  const known = seen.filter((each) => each.offer !== null);
  const [first, ...others] = known;
  if (first === undefined) return unknownEdid;
  if (others.length === 0) return first;
  const offer = others.reduce<EdidOffer | null>(
    (all, each) => (all && each.offer ? common(all, each.offer) : all),
    first.offer,
  );
  return {
    offer,
    edidHex: null,
    limits: [],
    hands: [...known.flatMap(({ hands }) => hands), { deviceId: device.id, did: 'combines' }],
  };
}
