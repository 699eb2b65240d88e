import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import { type OpenProposal, openProposals } from '../../../shared/logs/open-proposals.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { Badge } from '../parts/notice.tsx';
import { deviceWord } from '../place/place-words.ts';
import { inWords } from '../words/sentence.tsx';
import { clockTime, dayAndTime, lengthOfTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { Table } from './table.tsx';
import { caseWords } from './words.ts';

/** What the logs say of the fault: what they cover, what comes before it, where they are silent. */
export function LogsPart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const proposals = openProposals(facts.logs, facts.ticket.triage.watches);
  return (
    <CasePart
      id="logs"
      title={t.whatLogsSay}
      isFolded={proposals.length === 0}
      digest={facts.logs.map(({ evidenceId, coverage }) => (
        <Badge key={evidenceId} tone={coverage.complete ? 'good' : 'caution'}>
          {t.coverage(coverage.covered, coverage.of)}
        </Badge>
      ))}
    >
      {facts.logs.length === 0 ? (
        <p>{t.noLogs}</p>
      ) : (
        facts.logs.map((log) => <Log key={log.evidenceId} facts={facts} log={log} proposals={proposals} />)
      )}
    </CasePart>
  );
}

type LogProps = { facts: CaseFacts; log: LogFinding; proposals: readonly OpenProposal[] };

function Log({ facts: { chain, zone }, log, proposals }: LogProps) {
  const t = caseWords();
  const waiting = proposals.filter(({ evidenceId }) => evidenceId === log.evidenceId).map(({ seen }) => seen);
  const name = log.deviceId === null ? (log.fileName ?? '') : deviceWord(chain, log.deviceId);
  return (
    <article class="stack">
      <h3>{t.logOf(name)}</h3>
      <p>
        <Badge tone={log.coverage.complete ? 'good' : 'caution'}>
          {t.coverage(log.coverage.covered, log.coverage.of)}
        </Badge>{' '}
        {inWords(log.coverage.sentence)}
      </p>
      {log.span !== null && (
        <p class="soft">
          {t.logSpan(dayAndTime(log.span.from, zone), dayAndTime(log.span.to, zone), number(log.lines))}
        </p>
      )}
      {log.precursors.length > 0 && (
        <Table
          caption={t.forerunners}
          heads={[t.forerunner, t.cameBefore, t.byChance, t.leads, t.doubt, t.regular]}
          figures={[1, 2, 3, 4]}
          rows={log.precursors.map((each) => [
            inWords(each.words),
            each.preceded,
            number(each.expected, 1),
            each.leadS === null ? '–' : `${number(each.leadS, 1)} s`,
            number(each.correctedP, 4),
            each.regular ? <strong>{t.yes}</strong> : t.no,
          ])}
        />
      )}
      {log.gaps.length > 0 && (
        <div>
          <h4>{t.gaps}</h4>
          <ul>
            {log.gaps.map(({ from, to, lengthS, endsInRestart }) => (
              <li key={from}>
                {dayAndTime(from, zone)} – {clockTime(to, zone)}, {lengthOfTime(lengthS / 60)}
                {endsInRestart && `, ${t.endsInRestart}`}
              </li>
            ))}
          </ul>
        </div>
      )}
      {waiting.length > 0 && (
        <div>
          <h4>{t.notConfirmed}</h4>
          <ul>
            {waiting.map(({ at, description }) => (
              <li key={at}>
                {dayAndTime(at, zone)}: {inWords(description)}
              </li>
            ))}
          </ul>
        </div>
      )}
      {log.notes.length > 0 && (
        <ul class="soft">
          {log.notes.map((note) => (
            <li key={messageKey(note)}>{inWords(note)}</li>
          ))}
        </ul>
      )}
    </article>
  );
}
