import { useEffect, useState } from 'preact/hooks';
import type { Finding } from '../../../../shared/contract/chain.ts';
import type { PlanReply } from '../../../../shared/contract/plan.ts';
import { paths } from '../../api/paths.ts';
import { snapshotOf } from '../../projection/project.ts';
import { isSettled, useDocument } from '../../store/documents.ts';
import { useHere } from './here.ts';
import type { PlanAnswer, PlanQuestion } from './plan-message.ts';
import type { Work } from './work.ts';

let worker: Worker | null = null;
const waiting = new Map<number, (answer: PlanAnswer) => void>();
let lastId = 0;

function ask(question: Omit<PlanQuestion, 'id'>): Promise<PlanAnswer> {
  if (worker === null) {
    worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PlanAnswer>) => {
      waiting.get(data.id)?.(data);
      waiting.delete(data.id);
    };
    // A plan is advice: without one every step is still there to be taken.
    worker.onerror = () => {
      for (const [id, answer] of waiting) answer({ id, plan: null, likely: [], findings: null });
      waiting.clear();
    };
  }
  lastId += 1;
  const id = lastId;
  return new Promise((resolve) => {
    waiting.set(id, resolve);
    worker?.postMessage({ ...question, id } satisfies PlanQuestion);
  });
}

export type PlanHere = {
  /** Null while it is being made, and where there is not enough to make it of. */
  readonly plan: PlanReply | null;
  /** Keys of the changes that a list of all begins with. */
  readonly likely: readonly string[];
  readonly findings: readonly Finding[] | null;
  readonly isMaking: boolean;
  /** What this device would have to read first, and can't without a connection. */
  readonly lacksSettings: boolean;
};

/** What the first thing that the plan advises begins with. */
export const ledBy = (plan: PlanReply | null) => plan?.offers[0]?.steps[0]?.type;

/** The plan of a ticket as it stands on this device, also without a connection; made anew after every step. */
export function usePlan({ ticket, chain, chainVersion, known }: Work): PlanHere {
  const organisation = useDocument(paths.organisation);
  const logs = useDocument(paths.logFindings(ticket.id)).body;
  const { kit, people, refused } = useHere(ticket.id);
  const [made, setMade] = useState<{ of: unknown; answer: PlanAnswer } | null>(null);
  const { triage } = ticket;
  const settings = organisation.body?.settings;
  useEffect(() => {
    if (settings === undefined) return undefined;
    let isWanted = true;
    const question = {
      snapshot: snapshotOf(ticket),
      chain,
      chainVersion,
      intake: ticket.intake,
      settings,
      firmwareLevels: known.firmwareLevels ?? [],
      logs: logs?.items ?? [],
      here: { kit, people, refused },
      now: new Date().toISOString(),
    };
    void ask(question).then((answer) => {
      if (isWanted) setMade({ of: triage, answer });
    });
    return () => {
      isWanted = false;
    };
  }, [triage, chain, chainVersion, settings, known.firmwareLevels, logs, kit, people, refused]);
  const isFresh = made?.of === triage;
  return {
    plan: isFresh ? made.answer.plan : null,
    likely: isFresh ? made.answer.likely : [],
    findings: made?.answer.findings ?? null,
    isMaking: settings === undefined ? !isSettled(organisation) : !isFresh,
    lacksSettings: settings === undefined && isSettled(organisation),
  };
}
