import type { ComponentChild } from 'preact';
import type { Problem } from '../../../shared/contract/problem.ts';
import { kindOfType } from '../../../shared/contract/problem-type.ts';
import { message } from '../../../shared/message/message.ts';
import { storedMessage } from '../../../shared/message/stored.ts';
import { frameWords } from '../words/frame.ts';
import { inWords, said } from '../words/sentence.tsx';
import { commandWord, terms } from '../words/terms.ts';
import { lengthOfTime } from '../words/times.ts';
import { fieldFault } from './fault-at.ts';
import { Notice } from './notice.tsx';

/** What a problem is called, by its kind; one without a kind says no more than that it went wrong. */
function titleOf(problem: Problem): ComponentChild {
  const kind = kindOfType(problem.type);
  return kind === null ? frameWords().refused : inWords(message(`problems/${kind}`));
}

/** Why, in a problem's own words; one that an earlier version kept has its sentence alone. */
function detailOf({ said: why, detail, title }: Problem): ComponentChild {
  if (why !== undefined) return inWords(why);
  return detail === undefined || detail === title ? null : inWords(storedMessage(detail));
}

/** Why something was refused, what is missing for it, and what is possible instead. */
export function Refusal({ problem }: { problem: Problem }) {
  const t = frameWords();
  return (
    <Notice tone="refusal" announce>
      <strong>{titleOf(problem)}</strong>
      <span>{detailOf(problem)}</span>
      {problem.remainingMin !== undefined && (
        <span>{t.stillToWatch(lengthOfTime(problem.remainingMin))}</span>
      )}
      <Points
        heading={t.missing}
        points={(problem.missing ?? []).map(
          ({ item, text }) => `${terms().completenessItem[item]}: ${said(text).text}`,
        )}
      />
      <Points
        heading={null}
        points={(problem.errors ?? []).map((error) => `${error.pointer}: ${fieldFault(error)}`)}
      />
      <Points heading={t.allowedNow} points={(problem.allowedNow ?? []).map(commandWord)} />
    </Notice>
  );
}

function Points({ heading, points }: { heading: string | null; points: readonly string[] }) {
  if (points.length === 0) return null;
  return (
    <div>
      {heading !== null && <span>{heading}</span>}
      <ul>
        {points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
    </div>
  );
}
