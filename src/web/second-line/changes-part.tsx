import type { ComponentChild } from 'preact';
import type { ChangeRecord, Judgement } from '../../../shared/contract/change.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { messageKey } from '../../../shared/message/same.ts';
import { minutesOf, occurrencesIn } from '../../../state-machines/triage/record.ts';
import { Facts } from '../parts/card.tsx';
import { Badge, Notice, type Tone } from '../parts/notice.tsx';
import { typed } from '../parts/typed.tsx';
import { deviceWord, placeWord } from '../place/place-words.ts';
import { changeWords } from '../words/change-words.ts';
import { percent } from '../words/percent.ts';
import { inWords, inWordsOf } from '../words/sentence.tsx';
import { clockTime, dayAndTime, lengthOfTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { EvidenceList } from './evidence-part.tsx';
import { Table } from './table.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

/** Each change in its order: what was foretold, what came of it, and how much that is worth. */
export function ChangesPart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const { changes } = facts.ticket.triage;
  return (
    <CasePart id="changes" title={t.changes}>
      {changes.length === 0 && <p>{t.noChanges}</p>}
      <ol class="case-changes">
        {changes.map((change, at) => (
          <li key={change.id}>
            <Change facts={facts} change={change} nth={at + 1} />
          </li>
        ))}
      </ol>
    </CasePart>
  );
}

const tones: Record<string, Tone> = { cleared: 'good', persists: 'refusal', inconclusive: 'caution' };

/** What was read before a change stands before what was read with it. */
const phaseOrder = ({ reading }: EvidenceItem): number =>
  reading?.kind === 'settings' && reading.phase === 'before' ? 0 : 1;

function Change({ facts, change, nth }: { facts: CaseFacts; change: ChangeRecord; nth: number }) {
  const t = caseWords();
  const { chain, evidence, ticket } = facts;
  const { judgement } = change;
  const items = evidence
    .filter(({ tie }) => tie.changeId === change.id)
    .toSorted((a, b) => phaseOrder(a) - phaseOrder(b) || Date.parse(a.at) - Date.parse(b.at));
  return (
    <article class="stack case-change" aria-labelledby={`change-${change.id}`}>
      <h3 id={`change-${change.id}`}>
        {nth}. {changeWords(change)}: {placeWord(chain, change.target)}
      </h3>
      <div class="row">
        <Badge>{values().statuses[change.status]}</Badge>
        {judgement !== null && (
          <Badge tone={tones[judgement.verdict] ?? 'plain'}>{values().verdicts[judgement.verdict]}</Badge>
        )}
        {judgement !== null && !judgement.attributable && <Badge tone="refusal">{t.notAttributable}</Badge>}
        {change.oneOfTwo !== null && <Badge>{t.oneOfTwo(percent(change.oneOfTwo.chance))}</Badge>}
        {change.enteredLate !== null && <Badge tone="caution">{t.enteredLate}</Badge>}
        {judgement?.override != null && <Badge tone="caution">{t.overridden}</Badge>}
        {change.round !== ticket.triage.round && <Badge>{t.earlierRound(change.round)}</Badge>}
      </div>
      <ChangeFacts facts={facts} change={change} />
      {judgement !== null && <Warnings facts={facts} judgement={judgement} />}
      {items.length > 0 && (
        <details>
          <summary>{t.readWithIt(items.length)}</summary>
          <EvidenceList facts={facts} items={items} />
        </details>
      )}
    </article>
  );
}

function ChangeFacts({ facts, change }: { facts: CaseFacts; change: ChangeRecord }) {
  const t = caseWords();
  const { zone, nameOf, ticket } = facts;
  const { judgement, appliedAt, finishedAt } = change;
  const until = finishedAt === null ? t.stillIn : clockTime(finishedAt, zone);
  return (
    <Facts
      facts={[
        [t.foretold, typed(change.expected)],
        [t.detail, typed(change.detail)],
        [t.madeBy, typed(change.enteredLate?.madeBy ?? '')],
        [
          t.when,
          appliedAt === null
            ? t.neverMade
            : `${dayAndTime(appliedAt, zone)} – ${until}, ${nameOf(change.by)}`,
        ],
        ...(judgement === null ? [[t.result, t.notJudged] as const] : judgementFacts(judgement)),
        [t.judgedBefore, earlierWords(change, zone)],
        [t.afterPutBack, putBackWords(ticket.triage, change)],
        [t.closingNote, typed(change.closingNote ?? '')],
      ]}
    />
  );
}

/** What the retest showed, and how much that is worth. */
function judgementFacts(judgement: Judgement): [string, ComponentChild][] {
  const t = caseWords();
  const { occurrences, watchedMin, tries, verdict, riskOfBeingFooled, override, computed } = judgement;
  const seen = t.seenIn(occurrences, lengthOfTime(watchedMin));
  const strength =
    riskOfBeingFooled !== null
      ? t.fooled(number(riskOfBeingFooled * 100, 2))
      : verdict === 'persists' && occurrences > 0
        ? t.certain
        : t.noFigure;
  return [
    [t.result, tries > 0 ? `${seen}, ${t.tries(tries)}` : seen],
    [t.strength, strength],
    [
      t.overrideReason,
      override === null ? '' : [typed(override.reason), ` (${t.computedWas(values().verdicts[computed])})`],
    ],
    [t.because, judgement.reasons.length === 0 ? '' : inWordsOf(judgement.reasons)],
  ];
}

/** Judgements that do not count any more, each with why; empty where there are none. */
const earlierWords = ({ earlierJudgements }: ChangeRecord, zone: string): ComponentChild =>
  earlierJudgements.length === 0
    ? ''
    : earlierJudgements.map(({ verdict, at, superseded }) => (
        <div key={superseded.at}>
          <s>
            {values().verdicts[verdict]}, {dayAndTime(at, zone)}
          </s>{' '}
          {caseWords().doesNotCount}: {values().superseded[superseded.because]}
        </div>
      ));

/** What was seen once it was put back; empty where nobody watched. */
function putBackWords({ watches }: TriageRecord, { id }: ChangeRecord): string {
  const after = watches.filter(
    ({ purpose, changeId, voided }) => purpose === 'confirm' && changeId === id && voided === null,
  );
  if (after.length === 0) return '';
  const minutes = after.reduce((sum, watch) => sum + minutesOf(watch), 0);
  return caseWords().seenIn(occurrencesIn(after).length, lengthOfTime(minutes));
}

function Warnings({ facts: { chain }, judgement }: { facts: CaseFacts; judgement: Judgement }) {
  const t = caseWords();
  return (
    <>
      {judgement.warnings.length > 0 && (
        <Notice tone="caution">
          {judgement.warnings.map((warning) => (
            <span key={messageKey(warning)}>{inWords(warning)}</span>
          ))}
        </Notice>
      )}
      {judgement.differences.length > 0 && (
        <Table
          caption={t.settingsDiffer}
          heads={[t.device, t.setting, t.before, t.after, t.wasDeclared]}
          rows={judgement.differences.map(({ deviceId, key, before, after, declared }) => [
            deviceWord(chain, deviceId),
            key,
            before === null ? '–' : String(before),
            after === null ? '–' : String(after),
            declared ? (
              t.yes
            ) : (
              <Badge key="declared" tone="refusal">
                {t.no}
              </Badge>
            ),
          ])}
        />
      )}
    </>
  );
}
