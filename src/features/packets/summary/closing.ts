import type { CaseEvidence, CaseFile } from '../../../../shared/contract/packet.ts';
import type { EdidSummary } from '../../../../shared/signal/edid/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { facts, inEnglish, placeWords, signature } from './parts.ts';
import { itemWords, moment, nameOf } from './words.ts';

/** Small pictures of photos, by the id of the evidence, as data URIs. */
export type Thumbnails = ReadonlyMap<string, string>;

/** What second line asked for, and what it got. */
export function requestSection(file: CaseFile): Html | null {
  const { requests, escalations } = file.triage;
  const earlier = escalations.filter(({ version }) => version < file.packet.version);
  if (requests.length === 0 && earlier.length === 0) return null;
  return section(
    'requests',
    'With second line before',
    list(
      earlier.map(
        (escalation) =>
          html`Version ${escalation.version} (${signature(file, escalation)}): ${escalation.question}${
            escalation.outcome !== null &&
            html`<br><span class="quiet">${outcomeWords[escalation.outcome.kind]}${escalation.outcome.text !== '' && `: ${escalation.outcome.text}`} (${signature(file, escalation.outcome)})</span>`
          }`,
      ),
    ),
    requests.length > 0 && html`<h3>Asked for</h3>`,
    list(
      requests.map(
        (request) =>
          html`${request.item !== null && `${itemWords[request.item]}: `}${request.text} <span class="quiet">${signature(file, request)}</span><br>${
            request.answer === null
              ? html`<span class="word warn">not answered</span>`
              : html`Answer: ${request.answer.text} <span class="quiet">${signature(file, request.answer)}</span> ${evidenceLinks(file, request.answer.evidenceIds)}`
          }`,
      ),
    ),
  );
}

const outcomeWords: Record<
  NonNullable<CaseFile['triage']['escalations'][number]['outcome']>['kind'],
  string
> = {
  accepted: 'accepted',
  handedBack: 'handed back',
  stepDirected: 'a step was directed',
  resubmitted: 'sent again',
  recalled: 'taken back',
};

const evidenceLinks = (file: CaseFile, ids: readonly string[]): Html =>
  html`${file.evidence.filter(({ id }) => ids.includes(id)).map((item) => html` ${linkTo(item)}`)}`;

const linkTo = (item: CaseEvidence): Html =>
  item.path === null
    ? html`${item.description || item.kind}`
    : html`<a href="${item.path}">${item.path.replace(/^evidence\//, '')}</a>`;

/** What is missing, and why it may be. */
export function waiverSection(file: CaseFile): Html {
  const { waivers } = file.packet;
  return section(
    'waived',
    'What this case does without',
    list(
      file.missing.map(({ item, text }) => {
        const waiver = waivers.find((one) => one.item === item);
        return html`${itemWords[item]}: ${inEnglish(text)}${waiver !== undefined && html`<br><span class="quiet">Waived: ${waiver.reason}</span>`}`;
      }),
    ) ?? none('Nothing: the case is complete.'),
  );
}

/** Photos to look at, then every item of evidence with its file in the bag. */
export function evidenceSection(file: CaseFile, thumbnails: Thumbnails): Html {
  const photos = file.evidence.flatMap((item) => {
    const source = thumbnails.get(item.id);
    return source === undefined || item.withdrawn !== null ? [] : [{ item, source }];
  });
  return section(
    'evidence',
    'Evidence',
    photos.length > 0 &&
      html`<div class="photos">${photos.map(
        ({ item, source }) =>
          html`<figure><img src="${source}" alt="${item.description || aboutWords(file, item)}"><figcaption>${linkTo(item)}<br>${aboutWords(file, item)}</figcaption></figure>`,
      )}</div>`,
    table(
      ['Item', 'About', 'What it says', 'Taken', 'SHA-256'],
      file.evidence.map((item) => [
        linkTo(item),
        aboutWords(file, item),
        saysWords(item),
        takenWords(file, item),
        hashWords(item),
      ]),
    ) ?? none('No evidence was added yet.'),
    html`<p class="quiet">The names lead to the files in this packet; they open once it is unpacked.</p>`,
  );
}

const showsWords = {
  sourceEnd: 'source end',
  sinkEnd: 'display end',
  label: 'printed label',
  port: 'port',
  screen: 'screen',
  other: '',
} as const;

function aboutWords(file: CaseFile, { tie, kind }: CaseEvidence): string {
  const { deviceId, portId, linkId, shows, changeId } = tie;
  const change = file.triage.changes.findIndex(({ id }) => id === changeId);
  return [
    kind,
    linkId === null ? '' : placeWords(file, { kind: 'link', linkId }),
    deviceId === null
      ? ''
      : placeWords(file, portId === null ? { kind: 'device', deviceId } : { kind: 'port', deviceId, portId }),
    shows === null ? '' : showsWords[shows],
    change < 0 ? '' : `change ${change + 1}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}

function saysWords(item: CaseEvidence): Html {
  const { reading, span, withdrawn } = item;
  const read =
    reading === null
      ? ''
      : reading.kind === 'firmware'
        ? reading.level
        : reading.kind === 'note'
          ? reading.text
          : `${Object.keys(reading.values).length} settings, ${reading.phase === 'apart' ? 'apart from any change' : `${reading.phase} the change`}`;
  const covers = span === null ? edidWords(item) : `covers ${moment(span.from)} to ${moment(span.to)}`;
  const parts = [item.description, read, covers].filter((part) => part !== '').join('; ');
  return withdrawn === null
    ? html`${parts}`
    : html`${parts} <span class="word warn">withdrawn</span>: ${withdrawn.reason}`;
}

/** Whose EDID it is and how sound, where one was decoded on arrival. */
function edidWords({ kind, facts }: CaseEvidence): string {
  const edid = facts?.edid as Partial<EdidSummary> | undefined;
  if (kind !== 'edid' || edid === undefined) return '';
  const name = [edid.manufacturer, edid.productName].filter((part) => typeof part === 'string').join(' ');
  const faults = edid.problems?.filter(({ severity }) => severity === 'error').length ?? 0;
  const sound =
    edid.checksumsValid === false ? 'checksum wrong' : faults > 0 ? `${faults} faults` : 'checksums hold';
  return `EDID of ${name || 'an unnamed display'}, ${edid.blockCount} blocks, ${sound}`;
}

const takenWords = (file: CaseFile, item: CaseEvidence): string =>
  `${nameOf(file, item.by)}, ${moment(item.at)}`;

const hashWords = ({ sha256 }: CaseEvidence): Html | null =>
  sha256 === null ? null : html`<code>${sha256.slice(0, 16)}…</code>`;

/** Notes that people left on the ticket. */
export const noteSection = (file: CaseFile): Html | null =>
  file.triage.notes.length === 0
    ? null
    : section(
        'notes',
        'Notes',
        list(
          file.triage.notes.map(
            (note) => html`${note.text} <span class="quiet">${signature(file, note)}</span>`,
          ),
        ),
      );

/** What else is in the packet, and how to tell that it is whole. */
export const packetSection = (file: CaseFile): Html =>
  section(
    'packet',
    'This packet',
    facts([
      ['case.json', 'this case for machines'],
      ['chain/', 'the chain as found and as it is now, and every version of it in between'],
      ['timeline.csv, timeline.json', 'all that happened, in order'],
      ['log/', 'the log, event by event, with its chain of hashes; HOW-TO-VERIFY.txt says how to check it'],
      ['evidence/', 'the files'],
    ]),
    html`<p>To see that nothing in it was changed, run in the folder that holds <code>bagit.txt</code>:
    <code>sha256sum -c manifest-sha256.txt</code> and <code>sha256sum -c tagmanifest-sha256.txt</code>.</p>
    <p class="quiet">Packet ${file.packet.id}, ticket ${file.ticket.id}.</p>`,
  );
