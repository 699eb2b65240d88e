import { type LinkEnds, linkEnds } from '../../chain/look-up.ts';
import { linkName, socketName } from '../../chain/place.ts';
import type { Chain, ContentProtectionVersion, Link } from '../../contract/chain.ts';

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
  sentence: string;
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
  const olderEnds = [
    { name: socketName(chain, link.from), does: output.contentProtection },
    { name: socketName(chain, link.to), does: input.contentProtection },
  ];
  return { ...hop, sentence: sentenceOf(linkName(chain, link), hop, olderEnds, demand) };
}

type End = { name: string; does: ContentProtectionVersion };

function sentenceOf(
  link: string,
  { version, allowed }: Pick<Hop, 'version' | 'allowed'>,
  ends: End[],
  demand: ContentDemand,
): string {
  const needed = demand === 'type1' ? '2.2 or newer' : 'content protection';
  const named = (wanted: End[]): string =>
    wanted.map(({ name, does }) => `${name} ${doing(does)}`).join(', ');
  switch (allowed) {
    case 'yes':
      return `Over ${link} both ends do ${version}.`;
    case 'no': {
      const old = ends.filter(({ does }) => does !== 'unknown' && !satisfies(does, demand));
      return `Over ${link} this content may not go: it asks for ${needed}, and ${named(old)}.`;
    }
    case 'unknown':
      return `Over ${link} it isn’t known: ${named(ends.filter(({ does }) => does === 'unknown'))}.`;
  }
}

function doing(version: ContentProtectionVersion): string {
  switch (version) {
    case 'none':
      return 'does none';
    case 'unknown':
      return 'isn’t recorded';
    default:
      return `does ${version}`;
  }
}
