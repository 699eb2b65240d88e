import {
  displaysOf,
  downstreamOf,
  linkEnds,
  pathsBetween,
  sourcesOf,
  upstreamOf,
} from '../../chain/graph.ts';
import { namedDevice, namedLink } from '../../chain/named-place.ts';
import type { Chain, Link } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import { type ContentDemand, type Hop, hopsOf } from './hop.ts';
import { type SourceTopology, topologyOf } from './topology.ts';

export type DisplayProtection = {
  sourceId: string;
  displayId: string;
  /** Whether the programme may be shown there: on some way every hop allows it, may allow it, or none does. */
  shown: 'yes' | 'no' | 'unknown';
  /** The first hop on the shortest way that settles it; null when it is shown. */
  linkId: string | null;
  sentence: Message;
};

export type ChainProtection = {
  demand: ContentDemand;
  hops: Hop[];
  displays: DisplayProtection[];
  topology: SourceTopology[];
};

/**
 * Content protection over a chain: the version that each hop ends up at, whether content of this kind may reach each
 * display from each source, and how much hangs behind each source against the standard's limits.
 *
 * Sources: HDCP 1.4 and HDCP 2.2 on HDMI (from memory); each constant names its clause.
 */
export function chainProtection(chain: Chain, demand: ContentDemand = 'type1'): ChainProtection {
  const hops = hopsOf(chain, demand);
  const displays = sourcesOf(chain).flatMap((source) => {
    const reached = downstreamOf(chain, source.id);
    return displaysOf(chain)
      .filter(({ id }) => reached.has(id))
      .map(({ id }) => displayProtection(chain, hops, source.id, id, demand));
  });
  return { demand, hops, displays, topology: topologyOf(chain, hops) };
}

function displayProtection(
  chain: Chain,
  hops: readonly Hop[],
  sourceId: string,
  displayId: string,
  demand: ContentDemand,
): DisplayProtection {
  const reaches = (allowed: readonly Hop['allowed'][]): boolean => {
    const open = new Set(hops.filter((hop) => allowed.includes(hop.allowed)).map(({ linkId }) => linkId));
    const links = chain.links.filter(({ id }) => open.has(id));
    return downstreamOf({ ...chain, links }, sourceId).has(displayId);
  };
  const shown = reaches(['yes']) ? 'yes' : reaches(['yes', 'unknown']) ? 'unknown' : 'no';
  const [shortest] = pathsBetween(chain, sourceId, displayId, 1).paths;
  const settling = shown === 'yes' ? undefined : firstThat(shortest?.linkIds ?? [], hops, shown);
  const way = { source: namedDevice(chain, sourceId), display: namedDevice(chain, displayId) };
  const { yes, unknown, no } = shownCodes[demand];
  const hop = settling?.sentence ?? null;
  const sentence =
    shown === 'yes' ? message(yes, way) : message(shown === 'no' ? no : unknown, { ...way, hop });
  return { sourceId, displayId, shown, linkId: settling?.linkId ?? null, sentence };
}

const shownCodes = {
  type0: { yes: 'protectedShown', unknown: 'protectedShownUnknown', no: 'protectedNotShown' },
  type1: { yes: 'type1Shown', unknown: 'type1ShownUnknown', no: 'type1NotShown' },
} as const;

const firstThat = (linkIds: readonly string[], hops: readonly Hop[], allowed: Hop['allowed']) =>
  linkIds.flatMap((id) => hops.find((hop) => hop.linkId === id) ?? []).find((hop) => hop.allowed === allowed);

export type SuspectCable = { linkId: string; sentence: Message };

/**
 * When a message says that a display lacks the newer version though its data sheet has it: the cables on the way to
 * it, most suspect first. It is the cable that spoils the exchange then, above all an active optical one: its slow
 * control lines go through electronics (common practice, no source). Empty when the record itself says that the
 * display's input is too old.
 */
export function cablesBehindVersionMessage(chain: Chain, displayId: string): SuspectCable[] {
  const onTheWay = upstreamOf(chain, displayId).add(displayId);
  const links = chain.links.filter((link) => onTheWay.has(link.to.deviceId));
  const intoDisplay = links.filter((link) => link.to.deviceId === displayId);
  if (intoDisplay.some((link) => linkEnds(chain, link)?.input.contentProtection === '1.4')) return [];
  return links
    .sort((a, b) => suspicion(b) - suspicion(a) || b.lengthM - a.lengthM)
    .map((link) => ({ linkId: link.id, sentence: suspectSentence(chain, link) }));
}

/** Order of suspicion by construction (common practice, no source). */
const order: Record<Link['construction'], number> = {
  activeOptical: 3,
  twistedPairExtender: 2,
  activeCopper: 1,
  passiveCopper: 0,
};
const suspicion = ({ construction }: Link): number => order[construction];

function suspectSentence(chain: Chain, link: Link): Message {
  const { construction, lengthM: length } = link;
  return message(construction === 'activeOptical' ? 'suspectOpticalCable' : 'suspectCable', {
    cable: namedLink(chain, link),
    construction,
    length,
  });
}
