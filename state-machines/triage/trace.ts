import {
  displaysOf,
  findDevice,
  pathsBetween,
  type SignalPath,
  sourcesOf,
} from '../../shared/chain/graph.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import type { LookMoment, LookOf, SignalField, SignalSeen } from '../../shared/contract/look.ts';
import type { Symptom } from '../../shared/contract/triage.ts';
import {
  changedOnPurpose,
  compared,
  fieldsFor,
  ownOfLink,
  setToSend,
  showsFault,
  showsNoFault,
} from './signal-compare.ts';

export type SignalLook = LookOf<'signal'>;
/** What a device says at one of its two ends: whether that is what it should be there. */
export type TracePoint = {
  deviceId: string;
  at: 'receives' | 'sends';
  says: 'right' | 'wrong';
  lookIds: string[];
};
export type Trace = {
  /** The way of the signal that was read along. */
  path: SignalPath;
  /** Along the signal. */
  points: TracePoint[];
  /** The stretch that is left: the last point that is right before the first one that is wrong. */
  lastRight: TracePoint | null;
  firstWrong: TracePoint | null;
  /** The first device that receives right and sends wrong, or the first link whose two ends differ. */
  found: { kind: 'device'; deviceId: string } | { kind: 'link'; linkId: string } | null;
};

/** What readings are judged by beside themselves. */
export type TraceCase = {
  chain: Chain;
  symptom: Pick<Symptom, 'kind'>;
  /** Devices that show the fault, as far as that is known; empty: all. */
  affectedSources?: readonly string[];
  affectedDisplays?: readonly string[];
};

/** The way of the signal that most of the readings lie on; without any, the first of those that show the fault. */
export function tracePath(of: TraceCase, readIds: ReadonlySet<string>): SignalPath | null {
  const { chain, affectedSources = [], affectedDisplays = [] } = of;
  const ways = sourcesOf(chain).flatMap((source) =>
    displaysOf(chain).flatMap((display) =>
      pathsBetween(chain, source.id, display.id, 8).paths.map((path) => ({
        path,
        read: path.deviceIds.filter((id) => readIds.has(id)).length,
        affected: Number(affectedSources.includes(source.id)) + Number(affectedDisplays.includes(display.id)),
      })),
    ),
  );
  const [best] = ways.toSorted((a, b) => b.read - a.read || b.affected - a.affected);
  return best?.path ?? null;
}

/**
 * Reads a chain by what its devices say of their signals: which end of which device is as it should be. Right is what
 * came in, or what the device is set to send; with a reading from a good moment, what it said then. The latest reading
 * of a device at a moment counts.
 *
 * @param looks readings of the chain as found, oldest first
 * @returns null where the chain has no way from a source to a display
 */
export function traceOf(of: TraceCase, looks: readonly SignalLook[]): Trace | null {
  const path = tracePath(of, new Set(looks.map(({ what }) => what.deviceId)));
  if (path === null) return null;
  const points = pointsAlong(of, path, looks);
  const firstWrongAt = points.findIndex(({ says }) => says === 'wrong');
  const before = firstWrongAt < 0 ? points : points.slice(0, firstWrongAt);
  const lastRight = before.findLast(({ says }) => says === 'right') ?? null;
  const firstWrong = points[firstWrongAt] ?? null;
  return { path, points, lastRight, firstWrong, found: foundIn(path, lastRight, firstWrong) };
}

type Expected = {
  /** What should come here; null where something on the way may have changed it. */
  signal: SignalSeen | null;
  lookIds: string[];
  /** What does not show any more from here on, since it is meant to be so. */
  excused: ReadonlySet<SignalField>;
};

function pointsAlong(of: TraceCase, path: SignalPath, looks: readonly SignalLook[]): TracePoint[] {
  const points: TracePoint[] = [];
  let expected: Expected = { signal: null, lookIds: [], excused: new Set() };
  for (const [at, deviceId] of path.deviceIds.entries()) {
    const own = looks.filter(({ what }) => what.deviceId === deviceId);
    const read = { bad: latest(own, 'bad'), good: latest(own, 'good'), isSource: at === 0 };
    const received = pointAt(of, { deviceId, at: 'receives', read, expected });
    const arrives = goingOn(received, expected, { at: 'receives', read });
    const leaves = leaving(of.chain, deviceId, read, arrives);
    const sent = pointAt(of, { deviceId, at: 'sends', read, expected: leaves });
    points.push(...[received, sent].flatMap((point) => point ?? []));
    const onTheWay = { ...leaves, excused: hiddenAfter(read, arrives), signal: withoutLink(leaves.signal) };
    expected = goingOn(sent, onTheWay, { at: 'sends', read });
  }
  return points;
}

type Read = { bad: SignalLook | null; good: SignalLook | null; isSource: boolean };
type Asked = { deviceId: string; at: TracePoint['at']; read: Read; expected: Expected };

/** What a device says at one end, and whether that is right; null where nothing can be said. */
function pointAt({ symptom }: TraceCase, { deviceId, at, read, expected }: Asked): TracePoint | null {
  const { bad, good, isSource } = read;
  const seen = bad?.what[at] ?? null;
  if (bad === null || seen === null) return null;
  const then = good?.what[at] ?? null;
  const fields = fieldsFor(symptom);
  const bearing = fields.filter(
    (field) => !expected.excused.has(field) && !(at === 'sends' && ownOfLink.includes(field)),
  );
  const { signal, excused } = expected;
  const says =
    (then === null ? null : compared(seen, then, fields)) ??
    (showsFault(seen, symptom, excused) ? 'wrong' : null) ??
    (signal === null ? null : compared(seen, signal, bearing)) ??
    (showsNoFault(seen, symptom) || (isSource && signal === null) ? 'right' : null);
  if (says === null) return null;
  const lookIds = [...new Set([...expected.lookIds, ...(good === null ? [] : [good.id]), bad.id])];
  return { deviceId, at, says, lookIds };
}

/** What was read is what should come next, unless it is wrong: after that nothing can be told by comparing. */
function goingOn(
  point: TracePoint | null,
  expected: Expected,
  { at, read: { bad } }: { at: TracePoint['at']; read: Read },
): Expected {
  if (point?.says === 'wrong') return { ...expected, signal: null, lookIds: [] };
  const seen = bad?.what[at] ?? null;
  return bad === null || seen === null ? expected : { ...expected, signal: seen, lookIds: [bad.id] };
}

/** What a device should send for what arrives; not known of one that processes the picture and was not read. */
function leaving(chain: Chain, deviceId: string, { bad, good }: Read, arrives: Expected): Expected {
  const device = findDevice(chain, deviceId);
  const isUnknown = arrives.signal === null || (device?.processesPicture === true && bad === null);
  const onPurpose = changedOnPurpose(bad?.what.intended ?? good?.what.intended ?? []);
  return {
    signal: isUnknown || arrives.signal === null ? null : setToSend(device, arrives.signal),
    lookIds: arrives.lookIds,
    excused: new Set([...arrives.excused, ...onPurpose]),
  };
}

/** HDR that is mapped away on purpose, or travels inside RGB, is not to be expected further on. */
function hiddenAfter({ bad, good }: Read, arrives: Expected): ReadonlySet<SignalField> {
  const onPurpose = changedOnPurpose(bad?.what.intended ?? good?.what.intended ?? []);
  return onPurpose.has('hdr') ? new Set([...arrives.excused, 'hdr']) : arrives.excused;
}

/** What was not read at the other end of a link says nothing of the rate that this link has negotiated. */
const withoutLink = (signal: SignalSeen | null): SignalSeen | null =>
  signal?.kind === 'signal' ? { ...signal, linkGbps: null } : signal;

const latest = (looks: readonly SignalLook[], moment: LookMoment): SignalLook | null =>
  looks.findLast(({ what }) => what.moment === moment) ?? null;

function foundIn(
  { deviceIds, linkIds }: SignalPath,
  lastRight: TracePoint | null,
  firstWrong: TracePoint | null,
): Trace['found'] {
  if (firstWrong === null) return null;
  const at = deviceIds.indexOf(firstWrong.deviceId);
  if (firstWrong.at === 'sends') {
    const isSource = at === 0;
    const receivesRight = lastRight?.deviceId === firstWrong.deviceId;
    return isSource || receivesRight ? { kind: 'device', deviceId: firstWrong.deviceId } : null;
  }
  const linkId = linkIds[at - 1];
  const isNext = lastRight !== null && deviceIds[at - 1] === lastRight.deviceId && lastRight.at === 'sends';
  return isNext && linkId !== undefined ? { kind: 'link', linkId } : null;
}

/** What the trace says of the side at a device; null where it says nothing there. */
export function traceSideAt(
  { points, path }: Trace,
  deviceId: string,
): { side: 'input' | 'output'; sendsWrong: boolean; lookIds: string[] } | null {
  const received = points.find((point) => point.deviceId === deviceId && point.at === 'receives');
  const sent = points.find((point) => point.deviceId === deviceId && point.at === 'sends');
  if (received?.says === 'wrong') return { side: 'input', sendsWrong: false, lookIds: received.lookIds };
  const isSource = path.deviceIds[0] === deviceId;
  const lookIds = [...new Set([...(received?.lookIds ?? []), ...(sent?.lookIds ?? [])])];
  if (sent?.says === 'wrong')
    return received !== undefined || isSource ? { side: 'output', sendsWrong: true, lookIds } : null;
  return received === undefined && sent === undefined ? null : { side: 'output', sendsWrong: false, lookIds };
}

/** Devices on the way at which the trace says a side that bounds what is left, along the signal. */
export function boundsOf(trace: Trace): string[] {
  const { lastRight, firstWrong } = trace;
  const ids = [lastRight?.deviceId, firstWrong?.deviceId].flatMap((id) => id ?? []);
  return [...new Set(ids)].filter((id) => traceSideAt(trace, id) !== null);
}

/** Devices of the stretch that is left at which nothing was read yet, the one that halves it best first. */
export function nextToRead(trace: Trace, readIds: ReadonlySet<string>): string[] {
  const { path, lastRight, firstWrong } = trace;
  const from = lastRight === null ? -1 : path.deviceIds.indexOf(lastRight.deviceId);
  const to = firstWrong === null ? path.deviceIds.length : path.deviceIds.indexOf(firstWrong.deviceId);
  const middle = (from + to) / 2;
  return path.deviceIds
    .filter((id, at) => at > from && at < to && !readIds.has(id))
    .toSorted((a, b) => awayFrom(middle, path, a) - awayFrom(middle, path, b));
}

const awayFrom = (middle: number, { deviceIds }: SignalPath, id: string): number =>
  Math.abs(deviceIds.indexOf(id) - middle);
