import { onlyWithSaid, patternSaid } from '../../../shared/isolation/pattern.ts';
import { Facts } from '../parts/card.tsx';
import { Notice } from '../parts/notice.tsx';
import { typed, typedInRow } from '../parts/typed.tsx';
import { deviceWord } from '../place/place-words.ts';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

/** What is asked of second line, and what the client complains of. */
export function SummaryPart({ facts }: { facts: CaseFacts }) {
  const { ticket, zone, nameOf } = facts;
  const t = caseWords();
  const escalation = ticket.triage.escalations.at(-1);
  return (
    <CasePart id="question" title={t.question}>
      {escalation === undefined ? (
        <p>{t.neverEscalated}</p>
      ) : (
        <>
          <p class="case-question">{typed(escalation.question)}</p>
          <p class="soft">
            {t.askedBy(nameOf(escalation.by), dayAndTime(escalation.at, zone), escalation.version)}
          </p>
          {escalation.waivers.length > 0 && (
            <Notice tone="caution">
              <strong>{t.waivedItems}</strong>
              <ul>
                {escalation.waivers.map(({ item, reason }) => (
                  <li key={item}>
                    {terms().completenessItem[item]}: {typed(reason)}
                  </li>
                ))}
              </ul>
            </Notice>
          )}
          {escalation.outcome !== null && (
            <Notice tone={escalation.outcome.kind === 'accepted' ? 'good' : 'plain'}>
              <strong>{values().outcomes[escalation.outcome.kind]}</strong>
              <span>{typed(escalation.outcome.text)}</span>
            </Notice>
          )}
        </>
      )}
      {ticket.missing.length > 0 && (
        <div>
          <h3>{t.notThere}</h3>
          <ul>
            {ticket.missing.map(({ item, text }) => (
              <li key={item + text}>
                {terms().completenessItem[item]}: {inWords(text)}
              </li>
            ))}
          </ul>
        </div>
      )}
      <details>
        <summary>{t.complaint}</summary>
        <Complaint facts={facts} />
      </details>
    </CasePart>
  );
}

function Complaint({ facts: { ticket, chain } }: { facts: CaseFacts }) {
  const t = caseWords();
  const { intake, triage } = ticket;
  const { perHour, lastsS, pattern, onlyWith } = triage.symptom;
  const named = (ids: readonly string[]) => ids.map((id) => deviceWord(chain, id)).join(', ');
  const answers = triage.whatChanged?.answers ?? intake.whatChanged;
  const oftenAndLong = [
    perHour === null ? null : t.perHour(number(perHour, 1)),
    lastsS === null ? null : t.lasts(number(lastsS, 1)),
  ].filter((part) => part !== null);
  return (
    <Facts
      facts={[
        [t.symptom, [terms().symptom[triage.symptom.kind], ...oftenAndLong].join(', ')],
        [t.fromSources, named(intake.affectedSources) || t.notTold],
        [t.onDisplays, named(intake.affectedDisplays) || t.notTold],
        [t.content, typedInRow([values().contents[intake.content], intake.affectedContent], '. ')],
        [t.howItComes, inWords(patternSaid(pattern))],
        [t.onlyWith, onlyWith === null ? '' : inWords(onlyWithSaid(onlyWith))],
        [t.since, typed(intake.since)],
        [t.workedBefore, intake.workedBefore === null ? t.notTold : intake.workedBefore ? t.yes : t.no],
        [
          t.changedBefore,
          answers.length === 0 ? (
            t.notAsked
          ) : (
            <ul>
              {answers.map(({ kind, text, when }) => (
                <li key={kind + text}>{typedInRow([terms().whatChanged[kind], text, when])}</li>
              ))}
            </ul>
          ),
        ],
        [t.triedOnPhone, typed(intake.triedOnPhone)],
        [t.notes, typed(intake.notes)],
      ]}
    />
  );
}
