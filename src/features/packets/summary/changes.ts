import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { ChangeRecord, Judgement } from '../../../../shared/contract/triage.ts';
import { minutesWatched, percent, times } from '../../../../shared/isolation/wording.ts';
import { changeLabel } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { facts, inEnglish, placeWords, signature } from './parts.ts';
import { seenIn } from './watches.ts';
import { moment } from './words.ts';

const statusWords: Record<ChangeRecord['status'], string> = {
  declared: 'declared, not yet made',
  applied: 'in place, not yet judged',
  judged: 'in place, judged',
  restored: 'put back',
  kept: 'kept',
  withdrawn: 'withdrawn before it was made',
};
const verdictWords: Record<Judgement['verdict'], string> = {
  cleared: 'the fault is gone with it',
  persists: 'the fault is still there with it',
  inconclusive: 'the retest does not settle it',
};

const changeWords = (file: CaseFile, change: ChangeRecord): string =>
  `${changeLabel(change.kind)}, ${placeWords(file, change.target)}`;

/** A sentence for each change that is still in the chain. */
export const changesInPlace = (file: CaseFile): string[] =>
  file.triage.changes.flatMap((change) => {
    if (change.status === 'kept') return [`Kept: ${changeWords(file, change)}.`];
    if (change.status !== 'applied' && change.status !== 'judged') return [];
    return [
      `${change.diagnostic ? 'Diagnostic, to be put back' : 'Not yet decided on'}: ${changeWords(file, change)}.`,
    ];
  });

/** How many were tried, and which took the fault away. */
export function changesInShort(file: CaseFile): string {
  const tried = file.triage.changes.filter(({ status }) => status !== 'declared' && status !== 'withdrawn');
  if (tried.length === 0) return 'None yet.';
  const cleared = tried
    .filter(({ judgement }) => judgement?.verdict === 'cleared')
    .map((change) => `${changeWords(file, change)}${reservations(file, change)}`);
  const gone =
    cleared.length === 0
      ? 'The fault was gone with none of them.'
      : `The fault was gone with: ${cleared.join('; ')}.`;
  return `${tried.length}. ${gone}`;
}

/** What else is to be known of a change that cleared the fault, in a line. */
function reservations(file: CaseFile, { id, judgement }: ChangeRecord): string {
  const confirming = file.triage.watches.filter(
    (watch) => watch.purpose === 'confirm' && watch.changeId === id,
  );
  return [
    judgement?.attributable === false ? ' (but more than that had changed)' : '',
    judgement?.override !== null ? ' (by hand, not by the watch)' : '',
    confirming.some((watch) => seenIn(watch).length > 0) ? ', and came back when that was put back' : '',
  ].join('');
}

/** Each change with what was expected of it, what came, and how much that is worth. */
export const changeSection = (file: CaseFile): Html =>
  section(
    'changes',
    'Changes, one at a time',
    file.triage.changes.length === 0
      ? none('Nothing was changed yet.')
      : html`${file.triage.changes.map((change, index) => changeArticle(file, change, index + 1))}`,
  );

function changeArticle(file: CaseFile, change: ChangeRecord, number: number): Html {
  const { judgement } = change;
  return html`<article class="change"><h3>${number}. ${changeWords(file, change)}</h3>
    ${facts([
      ['Detail', change.detail],
      ['Expected', change.expected],
      ['Settings declared', change.settings.map(({ key, to }) => `${key} to ${String(to)}`).join(', ')],
      ['Declared', signature(file, { at: change.declaredAt, by: change.by })],
      ['In place from', change.appliedAt === null ? null : moment(change.appliedAt)],
      ['Result', judgement === null ? 'not judged' : resultWords(judgement)],
      ['Watched', judgement === null ? null : watchedWords(judgement)],
      ['Risk of being fooled', judgement === null ? null : riskWords(judgement)],
      ['Down to this change', judgement === null ? null : attributionWords(judgement)],
      [
        'Now',
        `${statusWords[change.status]}${change.finishedAt === null ? '' : `, ${moment(change.finishedAt)}`}`,
      ],
      ['Closing note', change.closingNote],
    ])}
    ${judgement !== null && judgementDetails(file, judgement)}</article>`;
}

function resultWords(judgement: Judgement): Html {
  const { verdict, computed, override } = judgement;
  const byHand =
    override === null
      ? ''
      : ` Judged by hand (${override.reason}); by the watch alone: ${verdictWords[computed]}.`;
  return html`<span class="word">${verdict}</span>: ${verdictWords[verdict]}.${byHand}`;
}

const watchedWords = ({ watchedMin, tries, occurrences }: Judgement): string =>
  [
    minutesWatched(watchedMin),
    tries === 0 ? '' : `${tries} tries`,
    occurrences === 0 ? 'the fault did not come' : `the fault came ${times(occurrences)}`,
  ]
    .filter((part) => part !== '')
    .join(', ');

const riskWords = ({ riskOfBeingFooled }: Judgement): string =>
  riskOfBeingFooled === null
    ? 'cannot be computed from what was watched'
    : `${percent(riskOfBeingFooled)}: the chance of seeing what was seen if nothing had changed`;

const attributionWords = ({ attributable }: Judgement): string | Html =>
  attributable
    ? 'yes: nothing else is known to have changed'
    : html`<span class="word warn">no</span>: settings read before and after differ in more than was declared`;

function judgementDetails(file: CaseFile, { reasons, warnings, differences }: Judgement): Html {
  return html`${list([...reasons.map(inEnglish), ...warnings.map((warning) => html`<span class="word warn">Warning:</span> ${inEnglish(warning)}`)])}
    ${table(
      ['Setting', 'Before', 'After', 'Declared'],
      differences.map(({ deviceId, key, before, after, declared }) => [
        `${key} of ${placeWords(file, { kind: 'device', deviceId })}`,
        valueWords(before),
        valueWords(after),
        declared ? 'yes' : html`<span class="word warn">no</span>`,
      ]),
    )}`;
}

const valueWords = (value: unknown): string =>
  value === undefined || value === null ? 'absent' : String(value);

/** What is in the chain now that was not there as found, and the culprit and remedy where there are any. */
export function standingSection(file: CaseFile): Html {
  const { culprit, remedy, setAside } = file.triage;
  return section(
    'standing',
    'How things stand',
    list(changesInPlace(file)) ?? none('Nothing of what was tried is in place.'),
    culprit !== null &&
      facts([
        ['Culprit', placeWords(file, culprit.place)],
        ['Why', culprit.explanation],
        [
          'Confirmed',
          culprit.confirmation.kind === 'returned'
            ? 'the fault came back when it was put back'
            : `not done: ${culprit.confirmation.reason}`,
        ],
        ['Named by', `${culprit.namedBy === 'support' ? 'second line: ' : ''}${signature(file, culprit)}`],
      ]),
    remedy !== null &&
      facts([
        ['Remedy', `${remedy.kind === 'workaround' ? 'Workaround: ' : ''}${remedy.what}`],
        ['Limits', remedy.kind === 'workaround' ? remedy.limits : null],
        ['Accepted by', remedy.kind === 'workaround' ? remedy.acceptedBy : null],
      ]),
    setAside.length > 0 && html`<h3>Set aside</h3>`,
    list(
      setAside.map(
        (aside) =>
          `${aside.culprit === null ? '' : `${placeWords(file, aside.culprit.place)}; `}${aside.remedy?.what ?? ''} ${aside.reason} (${signature(file, aside)})`,
      ),
    ),
  );
}
