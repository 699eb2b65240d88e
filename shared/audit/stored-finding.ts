import type { Finding } from '../contract/chain.ts';
import { storedMessage } from '../message/index.ts';

/** As version 1 of the case file and of the phone's documents held a finding: in English sentences. */
type FindingInSentences = Pick<Finding, 'rule' | 'severity' | 'place'> & {
  placeName: string;
  text: string;
  whatToDo: string;
  source: string;
  caution: string | null;
};

/** A stored finding in today's form; what an earlier version said stays as it was written. */
export function findingAsToday(stored: Finding | FindingInSentences): Finding {
  if ('cautions' in stored) return stored;
  const { caution, placeName, text, whatToDo, source, ...rest } = stored;
  return {
    ...rest,
    placeName: storedMessage(placeName),
    text: storedMessage(text),
    whatToDo: storedMessage(whatToDo),
    source: storedMessage(source),
    cautions: caution === null ? [] : [storedMessage(caution)],
  };
}
