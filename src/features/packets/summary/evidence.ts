import type { CaseEvidence, CaseFile } from '../../../../shared/contract/packet.ts';
import type { EdidSummary } from '../../../../shared/signal/edid/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { none, section, table } from '../../../page/parts.ts';
import { placeWords, signature, struck } from './parts.ts';
import { termOf, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined, moment } from './words.ts';

/** Small pictures of photos, by the id of the evidence, as data URIs. */
export type Thumbnails = ReadonlyMap<string, string>;

/** Photos to look at, then every item of evidence with its file in the bag. */
export function evidenceSection(file: CaseFile, thumbnails: Thumbnails): Html {
  const t = wordsOf(file).evidence;
  const photos = file.evidence.flatMap((item) => {
    const source = thumbnails.get(item.id);
    return source === undefined || item.withdrawn !== null ? [] : [{ item, source }];
  });
  return section(
    'evidence',
    t.title,
    photos.length > 0 &&
      html`<div class="photos">${photos.map(
        ({ item, source }) =>
          html`<figure><img src="${source}" alt="${item.description || aboutWords(file, item)}"><figcaption>${linkTo(file, item)}<br>${aboutWords(file, item)}</figcaption></figure>`,
      )}</div>`,
    table(
      t.heads,
      file.evidence.map((item) => [
        linkTo(file, item),
        aboutWords(file, item),
        saysWords(file, item),
        signature(file, item),
        hashWords(item),
      ]),
    ) ?? none(t.none),
    html`<p class="quiet">${t.links}</p>`,
  );
}

/** An item by its file in the bag; a reading has none, and is called by what it is. */
export const linkTo = (file: CaseFile, { path, description, kind }: CaseEvidence): Html =>
  path === null
    ? html`${description || termOf(file, 'evidenceKind', kind)}`
    : html`<a href="${path}">${path.replace(/^evidence\//, '')}</a>`;

function aboutWords(file: CaseFile, { tie, kind }: CaseEvidence): string {
  const { deviceId, portId, linkId, shows, changeId } = tie;
  const change = file.triage.changes.findIndex(({ id }) => id === changeId);
  return joined(
    [
      termOf(file, 'evidenceKind', kind),
      linkId === null ? '' : placeWords(file, { kind: 'link', linkId }),
      deviceId === null
        ? ''
        : placeWords(
            file,
            portId === null ? { kind: 'device', deviceId } : { kind: 'port', deviceId, portId },
          ),
      shows === null ? '' : valueWordsOf(file).shown[shows],
      change < 0 ? '' : wordsOf(file).evidence.change(change + 1),
    ],
    ', ',
  );
}

function saysWords(file: CaseFile, item: CaseEvidence): Html | string {
  const { span, withdrawn, description } = item;
  const t = wordsOf(file);
  const covers = span === null ? '' : t.evidence.covers(moment(span.from), moment(span.to));
  const says = joined([description, readingWords(file, item), covers, edidWords(file, item)], '; ');
  return withdrawn === null
    ? says
    : struck(says, `${t.withdrawn}: ${withdrawn.reason} (${signature(file, withdrawn)})`);
}

function readingWords(file: CaseFile, { reading }: CaseEvidence): string {
  const t = wordsOf(file).evidence;
  switch (reading?.kind) {
    case undefined:
      return '';
    case 'firmware':
      return reading.level;
    case 'note':
      return reading.text;
    case 'settings':
      return `${t.settings(Object.keys(reading.values).length)}, ${t.phases[reading.phase]}`;
  }
}

/** Whose EDID it is and how sound, where one was decoded on arrival. */
function edidWords(file: CaseFile, { kind, facts }: CaseEvidence): string {
  const t = wordsOf(file).evidence;
  const edid = facts?.edid as Partial<EdidSummary> | undefined;
  if (kind !== 'edid' || edid === undefined) return '';
  const name = [edid.manufacturer, edid.productName].filter((part) => typeof part === 'string').join(' ');
  const faults = edid.problems?.filter(({ severity }) => severity === 'error').length ?? 0;
  const sound =
    edid.checksumsValid === false ? t.checksumWrong : faults > 0 ? t.faults(faults) : t.checksumsHold;
  return `${t.edidOf(name || t.unnamedDisplay, edid.blockCount ?? 0)}, ${sound}`;
}

const hashWords = ({ sha256 }: CaseEvidence): Html | null =>
  sha256 === null ? null : html`<code>${sha256.slice(0, 16)}…</code>`;
