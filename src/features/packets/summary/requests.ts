import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Escalation, SupportRequest } from '../../../../shared/contract/triage.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { changeWords } from './changes.ts';
import { linkTo } from './evidence.ts';
import { signature } from './parts.ts';
import { inWords, termOf, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined } from './words.ts';

/** What second line asked for, and what it got. */
export function requestSection(file: CaseFile): Html | null {
  const t = wordsOf(file).requests;
  const { requests, escalations } = file.triage;
  const earlier = escalations.filter(({ version }) => version < file.packet.version);
  if (requests.length === 0 && earlier.length === 0) return null;
  return section(
    'requests',
    t.title,
    list(earlier.map((escalation) => earlierWords(file, escalation))),
    requests.length > 0 && html`<h3>${t.askedFor}</h3>`,
    list(requests.map((request) => requestWords(file, request))),
  );
}

function earlierWords(file: CaseFile, escalation: Escalation): Html {
  const { version, question, outcome } = escalation;
  const asked = html`${wordsOf(file).requests.version(version, signature(file, escalation))}: ${question}`;
  if (outcome === null) return asked;
  const came = joined([valueWordsOf(file).outcomes[outcome.kind], outcome.text], ': ');
  return html`${asked}<br><span class="quiet">${came} (${signature(file, outcome)})</span>`;
}

function requestWords(file: CaseFile, request: SupportRequest): Html {
  const t = wordsOf(file).requests;
  const { item, text, answer, kind, change } = request;
  const answered =
    answer === null
      ? html`<span class="word warn">${t.notAnswered}</span>`
      : html`${t.answer} ${answer.text} <span class="quiet">${signature(file, answer)}</span> ${evidenceLinks(file, answer.evidenceIds)}`;
  const what = change === null ? '' : changeWords(file, change);
  const about = item === null ? (kind === 'step' ? t.directed : '') : termOf(file, 'completenessItem', item);
  const asked = joined([about, what, text], ': ');
  return html`${asked} <span class="quiet">${signature(file, request)}</span><br>${answered}`;
}

const evidenceLinks = (file: CaseFile, ids: readonly string[]): Html =>
  html`${file.evidence.filter(({ id }) => ids.includes(id)).map((item) => html` ${linkTo(file, item)}`)}`;

/** What is missing, and why it may be. */
export function waiverSection(file: CaseFile): Html {
  const t = wordsOf(file).waived;
  const { waivers } = file.packet;
  return section(
    'waived',
    t.title,
    list(
      file.missing.map(({ item, text }) => {
        const waiver = waivers.find((one) => one.item === item);
        return html`${termOf(file, 'completenessItem', item)}: ${inWords(file, text)}${waiver !== undefined && html`<br><span class="quiet">${t.waived(waiver.reason)}</span>`}`;
      }),
    ) ?? none(t.nothing),
  );
}
