import { displaysOf, downstreamOf, findDevice, freePorts, linkAtPort, linkEnds } from '../../chain/graph.ts';
import { namedPlace, namedPort } from '../../chain/named-place.ts';
import { bitRateGbps } from '../../chain/signal-mode.ts';
import type { Port, PortRef } from '../../contract/chain.ts';
import { type Message, message, type NamedPlace, type NamedPort } from '../../message/index.ts';
import { pluggingCautions } from './cautions.ts';
import { commonPractice, type LinkContext, type Observation, type Rule } from './rule.ts';

/** One end of the link, and the port at its other end. */
type Socket = { ref: PortRef; port: Port; peer: Port; named: NamedPlace; end: 'output' | 'input' };

function sockets({ chain, link, ends }: LinkContext): Socket[] {
  const socket = (ref: PortRef, port: Port, peer: Port): Socket => ({
    ref,
    port,
    peer,
    named: namedPlace(chain, { kind: 'port', ...ref }),
    end: port.direction,
  });
  return [socket(link.from, ends.output, ends.input), socket(link.to, ends.input, ends.output)];
}

const at = ({ ref }: Socket) => ({ kind: 'port' as const, ...ref });
const highestGbps = (port: Port): number => bitRateGbps(port.highestMode);
/** Other ports of the device that a port is of. */
const portsOf = ({ chain }: LinkContext, { deviceId }: PortRef, ports: readonly Port[]): NamedPort[] =>
  ports.map(({ id }) => namedPort(chain, { deviceId, portId: id }));

function portMode(context: LinkContext): Observation[] {
  return sockets(context).flatMap((socket): Observation[] => {
    const { port, named } = socket;
    if (port.setMode === null) return [];
    if (bitRateGbps(port.setMode) > highestGbps(port))
      return [
        {
          severity: 'note',
          text: message('portSetAboveHighest', {
            port: named,
            set: port.setMode,
            highest: port.highestMode,
          }),
          whatToDo: message('lookUpPortModes'),
          cautions: [],
          place: at(socket),
        },
      ];
    const fault = context.faults.find((each) => each.of === 'setting' && each.end === socket.end);
    if (fault === undefined) return [];
    const needed = fault.needGbps;
    return [
      {
        severity: 'mustFix',
        text: message('portSetBelowNeed', { port: named, set: port.setMode, needed }),
        whatToDo: message('setPortMode', { needed }),
        cautions: [],
        place: at(socket),
      },
    ];
  });
}

function lowerRatePort(context: LinkContext): Observation[] {
  return sockets(context).flatMap((socket): Observation[] => {
    const { ref, port, peer, named } = socket;
    if (highestGbps(port) >= highestGbps(peer)) return [];
    const lacks = lacksRate(context, socket);
    const better = betterPorts(context, ref, port);
    const observe = (severity: Observation['severity'], whatToDo: Message): Observation[] => [
      {
        severity,
        text: message('portOfLowerRate', {
          port: named,
          passes: highestGbps(port),
          better: portsOf(context, ref, better.all),
        }),
        whatToDo,
        cautions: severity === 'note' ? [] : pluggingCautions(context),
        place: at(socket),
      },
    ];
    if (better.free.length > 0)
      return observe(
        lacks ? 'mustFix' : 'note',
        message('movePlug', { to: portsOf(context, ref, better.free) }),
      );
    if (!lacks || better.all.length === 0) return [];
    return observe(
      'shouldFix',
      better.spare.length > 0
        ? message('swapPlugs', { with: portsOf(context, ref, better.spare) })
        : message('decideWhichPlugGoesFirst'),
    );
  });
}

/** Whether a rule here tells of another socket that passes more, so that nobody has to be told to look for one. */
export const isToldOfBetterPort = (context: LinkContext): boolean =>
  lowerRatePort(context).some(({ severity }) => severity !== 'note');

/** It can't pass a picture that is wanted; or the usual rate, which its other end passes, where the record wants none. */
function lacksRate({ chain, faults, assumptions }: LinkContext, { port, peer, end }: Socket): boolean {
  if (chain.wantedFormats.length === 0)
    return highestGbps(port) < Math.min(assumptions.requiredGbps, highestGbps(peer));
  return faults.some((fault) => fault.of === 'socket' && fault.ends.includes(end));
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
    const { ref, port, peer, named } = socket;
    const own = protectionRank[port.contentProtection];
    const other = protectionRank[peer.contentProtection];
    if (own === null || own >= 2 || (other !== null && other <= own)) return [];
    if (own > 0 && !context.asksForNewerProtection) return [];
    const better = freePorts(context.chain, ref.deviceId, port.direction).filter(
      (each) => (protectionRank[each.contentProtection] ?? 0) >= 2 && highestGbps(each) >= highestGbps(port),
    );
    if (better.length === 0) return [];
    const others = portsOf(context, ref, better);
    return [
      {
        severity: 'shouldFix',
        text:
          port.contentProtection === 'none'
            ? message('portWithoutProtection', { port: named, better: others })
            : message('portOfOlderProtection', {
                port: named,
                version: port.contentProtection,
                better: others,
              }),
        whatToDo: message('movePlug', { to: others }),
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
    code: 'outputForSound',
  },
  {
    word: /\bzone\b/i,
    severity: 'note',
    code: 'outputForAnotherZone',
  },
] as const;

function outputLabel(context: LinkContext): Observation[] {
  const { chain, link, ends } = context;
  const [from] = sockets(context);
  if (from === undefined || !labelWarnings.some(({ word }) => word.test(ends.output.label))) return [];
  const reached = downstreamOf(chain, ends.sink.id).add(ends.sink.id);
  if (!displaysOf(chain).some(({ id }) => reached.has(id))) return [];
  return labelWarnings.flatMap(({ word, severity, code }): Observation[] => {
    if (!word.test(ends.output.label)) return [];
    const others = freePorts(chain, link.from.deviceId, 'output').filter(({ label }) => !word.test(label));
    return [
      {
        severity,
        text: message(code, { output: from.named }),
        whatToDo:
          others.length > 0
            ? message('movePlugOrLookUp', { to: portsOf(context, link.from, others) })
            : message('lookUpOutput'),
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
