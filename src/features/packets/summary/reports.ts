import type { CameBackAnswer, LastedAnswer } from '../../../../shared/contract/diary-names.ts';
import { erasureOf } from '../../../../shared/contract/erased-text.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Diary, Report } from '../../../../shared/contract/triage.ts';
import { reportedIn } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { changesInPlaceAt } from './changes.ts';
import { signature, struck } from './parts.ts';
import { spoken, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { exactMoment, moment, nameOf } from './words.ts';

/** How often the client reported the fault, over the days in which they could; null where no diary was open. */
export function reportedWords(file: CaseFile): string | null {
  const { diaries, openedAt } = file.triage;
  if (diaries.length === 0) return null;
  const { days, occurrences } = reportedIn(file.triage, { from: openedAt, to: file.packet.createdAt });
  const number = Number(days.toPrecision(2));
  return wordsOf(file).reports.counted(
    spoken(file, (say) => say.times(occurrences)),
    spoken(file, (say) => say.number(number)),
    number === 1,
  );
}

/** What the client reported by their diary, one by one, with what was in place then; nothing where none was opened. */
export function reportSection(file: CaseFile): Html | null {
  const t = wordsOf(file).reports;
  const { diaries, reports } = file.triage;
  if (diaries.length === 0) return null;
  return section(
    'reports',
    t.title,
    html`<p>${t.sentence(reportedWords(file) ?? '')} ${t.weighsLess}</p>`,
    table(
      t.heads,
      reports.map((report) => reportRow(file, report)),
    ) ?? none(t.none),
    html`<h3>${t.diaries}</h3>`,
    list(diaries.map((diary) => diaryWords(file, diary))),
  );
}

function reportRow(file: CaseFile, report: Report): (string | Html)[] {
  const t = wordsOf(file).reports;
  const { occurredAt, lasted, cameBack, receivedAt, withdrawn } = report;
  if (erasureOf(occurredAt) !== null) return [occurredAt, '', '', '', moment(receivedAt)];
  const { lasted: lengths, cameBack: ways } = valueWordsOf(file);
  const at = exactMoment(occurredAt);
  return [
    withdrawn === null ? at : struck(at, t.leftOut(withdrawn.reason, signature(file, withdrawn))),
    lasted === null ? '' : (lengths[lasted as LastedAnswer] ?? lasted),
    cameBack === null ? '' : (ways[cameBack as CameBackAnswer] ?? cameBack),
    changesInPlaceAt(file, occurredAt),
    moment(receivedAt),
  ];
}

function diaryWords(file: CaseFile, { openedAt, until, closedAt, by }: Diary): string {
  const t = wordsOf(file).reports;
  const open = t.open(moment(openedAt), moment(closedAt ?? until));
  return `${open} (${t.openedBy(nameOf(file, by))})`;
}
