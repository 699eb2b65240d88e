import { type Message, storedMessage } from '../../message/index.ts';
import type { EdidProblem } from './problems.ts';

type ProblemThen = Omit<EdidProblem, 'text'> & { text: string | Message };
type FactsThen = {
  readonly edid?: { readonly problems?: readonly ProblemThen[] };
  readonly notes?: readonly (string | Message)[];
};

/** The facts of a file of evidence as today's: of an EDID version 1 kept problems and notes as sentences. */
export function edidFactsAsToday<Facts extends object>(facts: Facts): Facts {
  const { edid, notes } = facts as FactsThen;
  if (edid === undefined) return facts;
  const problems = edid.problems?.map((problem) => ({ ...problem, text: storedMessage(problem.text) }));
  return {
    ...facts,
    edid: problems === undefined ? edid : { ...edid, problems },
    ...(notes === undefined ? {} : { notes: notes.map(storedMessage) }),
  };
}
