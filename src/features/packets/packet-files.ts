import { withErasuresTold } from '../../../shared/contract/erased-text.ts';
import type { BagFile, CaseFile } from '../../../shared/contract/packet.ts';
import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import type { ChainVersionDocument } from '../chains/index.ts';
import { type LoggedEvent, logFiles } from '../ticket-record/index.ts';
import { bagDeclaration, bagInfo, manifest, payloadOxum } from './bag.ts';
import type { Damage } from './damage.ts';
import { erasureWords, wordsOf } from './summary/tongue.ts';
import { timelineCsv } from './timeline-csv.ts';

/** A file that we write, before it is stored. `path` is relative to the bag's folder. */
export type WrittenFile = { readonly path: string; readonly content: string | Uint8Array };

export type PacketContents = {
  readonly file: CaseFile;
  readonly events: readonly LoggedEvent[];
  readonly timeline: readonly TimelineEntry[];
  readonly chainVersions: readonly ChainVersionDocument[];
  /** HTML. */
  readonly summary: string;
  /** Evidence whose file was no longer what it was when the packet was made: listed by the hash that it had. */
  readonly damage: readonly Damage[];
};

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The payload that we write ourselves; the evidence comes beside it. */
export const writtenPayload = ({
  file,
  events,
  timeline,
  chainVersions,
  summary,
}: PacketContents): WrittenFile[] => [
  { path: 'data/summary.html', content: summary },
  { path: 'data/case.json', content: json(file) },
  ...chainVersions.map((version) => ({
    path: `data/chain/version-${String(version.version).padStart(4, '0')}.json`,
    content: json(version),
  })),
  ...(file.triage.asFound === null
    ? []
    : [{ path: 'data/chain/as-found.json', content: json(file.triage.asFound) }]),
  { path: 'data/timeline.json', content: json(timeline) },
  { path: 'data/timeline.csv', content: timelineCsv(timeline, file.language) },
  ...Object.entries(logFiles(events, 'bagit.txt')).map(([name, content]) => ({
    path: `data/log/${name}`,
    content,
  })),
];

/** The evidence as it lies in the bag. An item whose file is there twice is listed under both names. */
export const evidenceFiles = (file: CaseFile): BagFile[] =>
  file.evidence.flatMap(({ path, sha256, sizeBytes }) =>
    path === null || sha256 === null || sizeBytes === null
      ? []
      : [{ path: `data/${path}`, sha256, sizeBytes }],
  );

/** Tag files over a payload (RFC 8493, section 2), less the tag manifest, which lists these. */
export const tagFiles = (
  { file, damage }: Pick<PacketContents, 'file' | 'damage'>,
  payload: readonly BagFile[],
): WrittenFile[] => [
  { path: 'bagit.txt', content: bagDeclaration },
  { path: 'bag-info.txt', content: bagInfo([...infoOf(file, payload), ...damage.map(damageInfo)]) },
  { path: 'manifest-sha256.txt', content: manifest(payload) },
];

export const tagManifest = (tags: readonly BagFile[]): WrittenFile => ({
  path: 'tagmanifest-sha256.txt',
  content: manifest(tags),
});

const damageInfo = ({ path, is }: Damage): [string, string] => ['Damaged-File', `${path} is ${is}`];

function infoOf(file: CaseFile, payload: readonly BagFile[]): [string, string][] {
  const { packet, ticket, organisation } = file;
  const question = withErasuresTold(packet.question, (erasure) => erasureWords(file, erasure));
  return [
    ['Source-Organization', organisation.name],
    ['Contact-Name', file.people.find(({ id }) => id === packet.createdBy)?.name ?? packet.createdBy],
    ['External-Description', `${wordsOf(file).title(ticket.number, packet.version)}: ${question}`],
    ['Bagging-Date', packet.createdAt.slice(0, 10)],
    ['External-Identifier', `urn:uuid:${packet.id}`],
    ['Bag-Group-Identifier', `urn:uuid:${ticket.id}`],
    ['Bag-Count', `${packet.version} of ?`],
    ['Payload-Oxum', payloadOxum(payload)],
    ['Case-Packet-Version', String(packet.version)],
    ['Case-Packet-Language', file.language],
  ];
}

/** The folder that the bag unpacks into. */
export const bagFolder = ({ ticket, packet }: Pick<CaseFile, 'ticket' | 'packet'>): string =>
  `case-${ticket.number}-version-${packet.version}`;
