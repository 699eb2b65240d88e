import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../../shared/contract/problem.ts';
import { problemKind } from '../api/answer.ts';
import { frameWords } from '../words/frame.ts';
import { language } from '../words/language.ts';
import { inWords, said } from '../words/sentence.tsx';
import { commandWord, terms } from '../words/terms.ts';
import { lengthOfTime } from '../words/times.ts';
import { Notice } from './notice.tsx';

/** The title of a problem in the language of the screens. */
export function useProblemTitle(problem: Problem): string {
  const [german, setGerman] = useState<Record<string, string> | null>(null);
  const isGerman = language.value === 'de';
  useEffect(() => {
    if (isGerman) void import('../words/problems-de.ts').then((module) => setGerman(module.problemsInGerman));
  }, [isGerman]);
  return (isGerman ? german?.[problemKind(problem) ?? ''] : undefined) ?? problem.title;
}

/** Why something was refused, what is missing for it, and what is possible instead. */
export function Refusal({ problem }: { problem: Problem }) {
  const t = frameWords();
  const title = useProblemTitle(problem);
  return (
    <Notice tone="refusal" announce>
      <strong>{title}</strong>
      <span>{inWords(problem.detail)}</span>
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
        points={(problem.errors ?? []).map(({ pointer, text }) => `${pointer}: ${said(text).text}`)}
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
