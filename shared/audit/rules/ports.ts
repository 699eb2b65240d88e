import { displaysOf, downstreamOf, findDevice, freePorts, linkAtPort, linkEnds } from '../../chain/graph.ts';
import { placeName } from '../../chain/place.ts';
import { listed, sentenceStart } from '../../chain/sentences.ts';
import { bitRateGbps, gbps, modeName } from '../../chain/signal-mode.ts';
import type { Port, PortRef } from '../../contract/chain.ts';
import { neededGbps } from './cables.ts';
import { pluggingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

/** One end of the link, and the port at its other end. */
type Socket = { ref: PortRef; port: Port; peer: Port; name: string };

function sockets({ chain, link, ends }: LinkContext): Socket[] {
  const socket = (ref: PortRef, port: Port, peer: Port): Socket => ({
    ref,
    port,
    peer,
    name: placeName(chain, { kind: 'port', ...ref }),
  });
  return [socket(link.from, ends.output, ends.input), socket(link.to, ends.input, ends.output)];
}

const at = ({ ref }: Socket) => ({ kind: 'port' as const, ...ref });
const highestGbps = (port: Port): number => bitRateGbps(port.highestMode);
const labels = (ports: readonly Port[], word?: 'or'): string =>
  listed(
    ports.map(({ label }) => `'${label}'`),
    word,
  );

function portMode(context: LinkContext): Observation[] {
  return sockets(context).flatMap((socket): Observation[] => {
    const { port, name } = socket;
    if (port.setMode === null) return [];
    const isGbps = bitRateGbps(port.setMode);
    if (isGbps > highestGbps(port))
      return [
        {
          severity: 'note',
          text: `${sentenceStart(name)} is noted as set to ${modeName(port.setMode)}, more than its highest mode, ${modeName(port.highestMode)}.`,
          whatToDo: 'Look at both in the menu and the manual, and correct the record.',
          cautions: [],
          place: at(socket),
        },
      ];
    const needed = neededGbps(context);
    if (isGbps >= needed) return [];
    return [
      {
        severity: 'mustFix',
        text: `${sentenceStart(name)} is set to ${modeName(port.setMode)}, but both ends of this link pass ${gbps(needed)}.`,
        whatToDo: `Note the setting as found, then set the port to the mode that passes ${gbps(needed)}.`,
        cautions: [],
        place: at(socket),
      },
    ];
  });
}

function lowerRatePort(context: LinkContext): Observation[] {
  return sockets(context).flatMap((socket): Observation[] => {
    const { ref, port, peer, name } = socket;
    if (highestGbps(port) >= highestGbps(peer)) return [];
    const lacks = highestGbps(port) < Math.min(context.assumptions.requiredGbps, highestGbps(peer));
    const better = betterPorts(context, ref, port);
    const observe = (severity: Observation['severity'], whatToDo: string): Observation[] => [
      {
        severity,
        text: `${sentenceStart(name)} passes ${gbps(highestGbps(port))} at most; ${labels(better.all)} of the same device ${better.all.length > 1 ? 'pass' : 'passes'} more.`,
        whatToDo,
        cautions: severity === 'note' ? [] : pluggingCautions(context),
        place: at(socket),
      },
    ];
    if (better.free.length > 0)
      return observe(lacks ? 'mustFix' : 'note', `Move the plug to ${labels(better.free, 'or')}.`);
    if (!lacks || better.all.length === 0) return [];
    return observe(
      'shouldFix',
      better.spare.length > 0
        ? `Swap it with the plug in ${labels(better.spare, 'or')}, which needs less.`
        : 'The better ones are taken by links that need them too: decide which goes first.',
    );
  });
}

/** Ports of the same device and direction that pass more: all of them, those free, those whose link needs no more. */
function betterPorts({ chain }: LinkContext, ref: PortRef, port: Port) {
  const all = (findDevice(chain, ref.deviceId)?.ports ?? []).filter(
    (each) => each.direction === port.direction && highestGbps(each) > highestGbps(port),
  );
  const freeIds = new Set(freePorts(chain, ref.deviceId, port.direction).map(({ id }) => id));
  const spare = all.filter((each) => {
    const taken = linkAtPort(chain, { deviceId: ref.deviceId, portId: each.id });
    const ends = taken === undefined ? null : linkEnds(chain, taken);
    const peer = port.direction === 'output' ? ends?.input : ends?.output;
    return peer !== undefined && highestGbps(peer) <= highestGbps(port);
  });
  return { all, free: all.filter(({ id }) => freeIds.has(id)), spare };
}

const protectionRank: Record<Port['contentProtection'], number | null> = {
  none: 0,
  '1.4': 1,
  '2.2': 2,
  '2.3': 3,
  unknown: null,
};

function portProtection(context: LinkContext): Observation[] {
  return sockets(context).flatMap((socket): Observation[] => {
    const { ref, port, peer, name } = socket;
    const own = protectionRank[port.contentProtection];
    const other = protectionRank[peer.contentProtection];
    if (own === null || own >= 2 || (other !== null && other <= own)) return [];
    const better = freePorts(context.chain, ref.deviceId, port.direction).filter(
      (each) => (protectionRank[each.contentProtection] ?? 0) >= 2 && highestGbps(each) >= highestGbps(port),
    );
    if (better.length === 0) return [];
    return [
      {
        severity: 'shouldFix',
        text: `${sentenceStart(name)} does content protection ${port.contentProtection === 'none' ? 'not at all' : `${port.contentProtection} only`}; free on the same device with 2.2 or newer: ${labels(better)}.`,
        whatToDo: `Move the plug to ${labels(better, 'or')}.`,
        cautions: pluggingCautions(context),
        place: at(socket),
      },
    ];
  });
}

/** Words on an output that say it isn't the one for a picture at full rate. */
const labelWarnings = [
  {
    word: /\baudio\b/i,
    severity: 'shouldFix',
    means: 'such outputs usually carry sound only',
  },
  {
    word: /\bzone\b/i,
    severity: 'note',
    means: 'outputs for another zone often pass less than the main one',
  },
] as const;

function outputLabel(context: LinkContext): Observation[] {
  const { chain, link, ends } = context;
  const [from] = sockets(context);
  if (from === undefined || !labelWarnings.some(({ word }) => word.test(ends.output.label))) return [];
  const reached = downstreamOf(chain, ends.sink.id).add(ends.sink.id);
  if (!displaysOf(chain).some(({ id }) => reached.has(id))) return [];
  return labelWarnings.flatMap(({ word, severity, means }): Observation[] => {
    if (!word.test(ends.output.label)) return [];
    const others = freePorts(chain, link.from.deviceId, 'output').filter(({ label }) => !word.test(label));
    return [
      {
        severity,
        text: `The way to a display leaves ${from.name}; ${means}.`,
        whatToDo:
          others.length > 0
            ? `Move the plug to ${labels(others, 'or')}, or look up what this output does.`
            : 'Look up in the manual what this output does.',
        cautions: pluggingCautions(context),
        place: at(from),
      },
    ];
  });
}

/** The right port, and the right mode of it, at both ends of each cable. */
export const portRules: readonly Rule<LinkContext>[] = [
  { id: 'port-mode', source: commonPractice, urgentFor: [], check: portMode },
  { id: 'lower-rate-port', source: commonPractice, urgentFor: [], check: lowerRatePort },
  {
    id: 'port-protection',
    source: commonPractice,
    urgentFor: ['contentProtectionMessage', 'noPicture'],
    check: portProtection,
  },
  {
    id: 'right-port-label',
    source: commonPractice,
    urgentFor: ['soundOnly', 'noPicture'],
    check: outputLabel,
  },
];
