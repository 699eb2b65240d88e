import { type LinkEnds, linkEnds } from '../../chain/look-up.ts';
import { namedLink, namedPort } from '../../chain/named-place.ts';
import type { Chain, ContentProtectionVersion, Link } from '../../contract/chain.ts';
import { type Message, message, type NamedPlace, type NamedPort } from '../../message/index.ts';

/**
 * What a programme asks for. `type1`: it must not go to anything older than 2.2. `type0`: any version does.
 * Source: HDCP 2.2 on HDMI, stream type (from memory).
 */
export type ContentDemand = 'type0' | 'type1';

type KnownVersion = Exclude<ContentProtectionVersion, 'unknown'>;
/** Oldest first. */
const versions: readonly KnownVersion[] = ['none', '1.4', '2.2', '2.3'];
const leastVersion: Record<ContentDemand, KnownVersion> = { type0: '1.4', type1: '2.2' };

const rank = (version: KnownVersion): number => versions.indexOf(version);
const satisfies = (version: KnownVersion, demand: ContentDemand): boolean =>
  rank(version) >= rank(leastVersion[demand]);

/** One hop: an output and an input that authenticate each other over a link. */
export type Hop = {
  linkId: string;
  sourceId: string;
  sinkId: string;
  /** What both ends do, the older of the two. */
  version: ContentProtectionVersion;
  /** Whether the programme may go over it; `unknown` where an end isn't known and the other would do. */
  allowed: 'yes' | 'no' | 'unknown';
  sentence: Message;
};

/** The hops of a chain, in the order of its links; without links with an end that isn't there. */
export function hopsOf(chain: Chain, demand: ContentDemand): Hop[] {
  return chain.links.flatMap((link) => {
    const ends = linkEnds(chain, link);
    return ends === null ? [] : [hopOf(chain, link, ends, demand)];
  });
}

function hopOf(chain: Chain, link: Link, ends: LinkEnds, demand: ContentDemand): Hop {
  const { source, output, sink, input } = ends;
  const both = [output.contentProtection, input.contentProtection];
  const known = both.filter((version) => version !== 'unknown');
  const older = versions.find((version) => known.includes(version));
  const version = known.length === 2 || older === 'none' ? (older ?? 'unknown') : 'unknown';
  const ruledOut = known.some((each) => !satisfies(each, demand));
  const allowed = ruledOut ? 'no' : known.length === 2 ? 'yes' : 'unknown';
  const hop = { linkId: link.id, sourceId: source.id, sinkId: sink.id, version, allowed } as const;
  const bothEnds = [
    { port: namedPort(chain, link.from), does: output.contentProtection },
    { port: namedPort(chain, link.to), does: input.contentProtection },
  ];
  return { ...hop, sentence: sentenceOf(namedLink(chain, link), { hop, ends: bothEnds }, demand) };
}

type End = { port: NamedPort; does: ContentProtectionVersion };

function sentenceOf(
  link: NamedPlace,
  { hop, ends }: { hop: Pick<Hop, 'version' | 'allowed'>; ends: End[] },
  demand: ContentDemand,
): Message {
  switch (hop.allowed) {
    case 'yes':
      return message('hopDoes', { link, version: hop.version });
    case 'no': {
      const old = ends.filter(({ does }) => does !== 'unknown' && !satisfies(does, demand)).map(doing);
      return message(demand === 'type1' ? 'hopTooOldForType1' : 'hopUnprotected', { link, ends: old });
    }
    case 'unknown':
      return message('hopUnknown', { link, ends: ends.filter(({ does }) => does === 'unknown').map(doing) });
  }
}

function doing({ port, does }: End): Message {
  switch (does) {
    case 'none':
      return message('endDoesNone', { port });
    case 'unknown':
      return message('endNotRecorded', { port });
    default:
      return message('endDoes', { port, version: does });
  }
}
