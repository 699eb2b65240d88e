import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { ChangeRecord, Judgement } from '../../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../../shared/isolation/change-catalogue.ts';
import { message } from '../../../../shared/message/index.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import { occurrencesIn } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { deviceWords, facts, placeWords, signature, struck } from './parts.ts';
import { inWords, spoken, termOf, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined, moment } from './words.ts';

/** What was changed, and where; what whoever made it had to describe, in their words. */
export function changeWords(
  file: CaseFile,
  change: Pick<ChangeRecord, 'kind' | 'target'> & Partial<Pick<ChangeRecord, 'own' | 'detail'>>,
): string {
  const isDescribed = changeCatalogue[change.kind].describedBy === 'whoDeclares';
  const name = inWords(file, message('changeName', { change: namedChange(change) }));
  const detail = isDescribed && change.detail ? change.detail : '';
  return joined([joined([name, detail], ': '), placeWords(file, change.target)], ', ');
}

/** A change by its number in its section, where it is told. */
export function numberedChange(file: CaseFile, id: string): string {
  const at = file.triage.changes.findIndex((change) => change.id === id);
  const change = file.triage.changes[at];
  return change === undefined ? '' : `${at + 1}. ${changeWords(file, change)}`;
}

/** The numbers of what was changed and in the chain at a moment. */
export const changesInPlaceAt = (file: CaseFile, at: string): string =>
  file.triage.changes
    .flatMap(({ appliedAt, finishedAt, status }, index) => {
      const isFrom = appliedAt !== null && Date.parse(appliedAt) <= Date.parse(at);
      const isOver = status !== 'kept' && finishedAt !== null && Date.parse(finishedAt) <= Date.parse(at);
      return isFrom && !isOver ? [index + 1] : [];
    })
    .join(', ');

/** A sentence for each change that is still in the chain. */
export function changesInPlace(file: CaseFile): string[] {
  const t = wordsOf(file).changes;
  return file.triage.changes.flatMap((change) => {
    if (change.status === 'kept') return [t.kept(changeWords(file, change))];
    if (change.status !== 'applied' && change.status !== 'judged') return [];
    return [(change.diagnostic ? t.toPutBack : t.notDecided)(changeWords(file, change))];
  });
}

/** How many were tried, and which took the fault away. */
export function changesInShort(file: CaseFile): string {
  const t = wordsOf(file).changes;
  const tried = file.triage.changes.filter(({ status }) => status !== 'declared' && status !== 'withdrawn');
  if (tried.length === 0) return t.noneTried;
  const cleared = tried
    .filter(({ judgement }) => judgement?.verdict === 'cleared')
    .map((change) => `${changeWords(file, change)}${reservations(file, change)}`);
  return cleared.length === 0 ? t.goneWithNone(tried.length) : t.goneWith(tried.length, cleared.join('; '));
}

/** What else is to be known of a change that cleared the fault, in a line. */
function reservations(file: CaseFile, { id, judgement }: ChangeRecord): string {
  const t = wordsOf(file).changes;
  const confirming = file.triage.watches.filter(
    (watch) => watch.purpose === 'confirm' && watch.changeId === id,
  );
  return [
    judgement?.attributable === false ? t.moreHadChanged : '',
    judgement?.override !== null ? t.byHand : '',
    occurrencesIn(confirming).length > 0 ? t.cameBack : '',
  ].join('');
}

/** Each change with what was expected of it, what came, and how much that is worth. */
export function changeSection(file: CaseFile): Html {
  const t = wordsOf(file).changes;
  const { changes } = file.triage;
  return section(
    'changes',
    t.title,
    changes.length === 0
      ? none(t.none)
      : html`${changes.map((change, index) => changeArticle(file, change, index + 1))}`,
  );
}

function changeArticle(file: CaseFile, change: ChangeRecord, number: number): Html {
  const t = wordsOf(file).changes;
  const { judgement, appliedAt, finishedAt } = change;
  return html`<article class="change"><h3>${number}. ${changeWords(file, change)}</h3>
    ${facts([
      [t.detail, changeCatalogue[change.kind].describedBy !== 'whoDeclares' && change.detail],
      [t.firmsOwn, firmsOwnWords(file, change)],
      ...lateFacts(file, change),
      [t.expected, change.expected],
      [t.settingsDeclared, change.settings.map(({ key, to }) => t.settingTo(key, String(to))).join(', ')],
      [t.declared, change.enteredLate === null && signature(file, { at: change.declaredAt, by: change.by })],
      [t.inPlaceFrom, appliedAt === null ? null : moment(appliedAt)],
      [t.result, judgement === null ? t.notJudged : resultWords(file, judgement)],
      [t.watched, judgement === null ? null : watchedWords(file, judgement)],
      [t.risk, judgement === null ? null : riskWords(file, judgement)],
      [t.attributable, judgement === null ? null : attributionWords(file, judgement)],
      [t.judgedBefore, earlierWords(file, change)],
      [
        t.now,
        joined(
          [valueWordsOf(file).statuses[change.status], finishedAt === null ? '' : moment(finishedAt)],
          ', ',
        ),
      ],
      [t.oneOfTwo, change.oneOfTwo === null ? null : t.oneOfTwoChance(change.oneOfTwo.chance)],
      [t.closingNote, change.closingNote],
    ])}
    ${judgement !== null && judgementDetails(file, judgement)}</article>`;
}

/** A change that nobody declared: at whose hand, what they say came, and that it counts for less. */
function lateFacts(file: CaseFile, { enteredLate, by }: ChangeRecord): [string, string][] {
  if (enteredLate === null) return [];
  const t = wordsOf(file).changes;
  const { madeBy, seen, at } = enteredLate;
  return [
    [t.enteredLate, signature(file, { at, by })],
    [t.madeBy, madeBy],
    [t.seenMeanwhile, termOf(file, 'lateFinding', seen)],
  ];
}

/** That a kind is the firm's own, and what it is said to do: no reader knows it otherwise. */
function firmsOwnWords(file: CaseFile, { own }: ChangeRecord): string | null {
  const t = wordsOf(file).changes;
  if (own === null) return null;
  const { keepsAway, caution } = own;
  const figure =
    keepsAway === null ? t.ownNoFigure : t.ownFigure(spoken(file, (say) => say.percent(keepsAway)));
  return joined([figure, caution], ' ');
}

const verdictWord = (file: CaseFile, { verdict }: Judgement): string =>
  spoken(file, (say) => say.verdict(verdict));

function resultWords(file: CaseFile, judgement: Judgement): Html {
  const t = wordsOf(file).changes;
  const { verdict, computed, override } = judgement;
  const { verdicts } = valueWordsOf(file);
  const byHand = override !== null && ` ${t.judgedByHand(override.reason, verdicts[computed])}`;
  return html`<span class="word">${verdictWord(file, judgement)}</span>: ${verdicts[verdict]}.${byHand}`;
}

/** Judgements that do not count any more, each with why. */
function earlierWords(file: CaseFile, { earlierJudgements }: ChangeRecord): Html | null {
  const { superseded } = valueWordsOf(file);
  const t = wordsOf(file).changes;
  return list(
    earlierJudgements.map((judgement) =>
      struck(
        t.judgedAs(verdictWord(file, judgement), signature(file, judgement)),
        t.doesNotCount(superseded[judgement.superseded.because], signature(file, judgement.superseded)),
      ),
    ),
  );
}

function watchedWords(file: CaseFile, judgement: Judgement): string | null {
  const t = wordsOf(file).changes;
  const { watchedMin, tries, occurrences, reported } = judgement;
  if (reported !== null && watchedMin === 0 && tries === 0 && occurrences === 0) return null;
  return joined(
    [
      spoken(file, (say) => say.minutesWatched(watchedMin)),
      tries === 0 ? '' : t.tries(tries),
      occurrences === 0 ? t.didNotCome : t.came(spoken(file, (say) => say.times(occurrences))),
    ],
    ', ',
  );
}

/** Nobody is fooled by a fault that is still there. */
function riskWords(file: CaseFile, { verdict, riskOfBeingFooled }: Judgement): string | null {
  const t = wordsOf(file).changes;
  if (verdict !== 'cleared') return null;
  return riskOfBeingFooled === null
    ? t.noRisk
    : t.riskIs(spoken(file, (say) => say.percent(riskOfBeingFooled)));
}

function attributionWords(file: CaseFile, { attributable }: Judgement): string | Html {
  const { changes: t, no } = wordsOf(file);
  return attributable ? t.nothingElse : html`<span class="word warn">${no}</span>: ${t.moreDiffers}`;
}

function judgementDetails(file: CaseFile, { reasons, warnings, differences }: Judgement): Html {
  const { changes: t, yes, no } = wordsOf(file);
  const value = (one: unknown): string => (one === undefined || one === null ? t.absent : String(one));
  return html`${list([
    ...reasons.map((reason) => inWords(file, reason)),
    ...warnings.map((warning) => html`<span class="word warn">${t.warning}</span> ${inWords(file, warning)}`),
  ])}
    ${table(
      t.differenceHeads,
      differences.map(({ deviceId, key, before, after, declared }) => [
        t.settingOf(key, deviceWords(file, deviceId)),
        value(before),
        value(after),
        declared ? yes : html`<span class="word warn">${no}</span>`,
      ]),
    )}`;
}
