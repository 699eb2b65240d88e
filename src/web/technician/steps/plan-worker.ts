import { tableOf } from '../../../../shared/isolation/overrides.ts';
import { factsOfLogs } from '../../../../state-machines/triage/plan/facts-of-logs.ts';
import { knownOfChain } from '../../../../state-machines/triage/plan/known.ts';
import { planWithLikely } from '../../../../state-machines/triage/plan/ticket-plan.ts';
import type { PlanAnswer, PlanQuestion } from './plan-message.ts';

// A plan takes some hundred milliseconds on a phone, so it is made beside the screen and not in its way.
self.onmessage = ({ data }: MessageEvent<PlanQuestion>) => {
  self.postMessage(answerTo(data));
};

/** The same plan that the server makes (src/features/planning), from what this phone has read. */
function answerTo(question: PlanQuestion): PlanAnswer {
  const { id, snapshot, chain, chainVersion, intake, settings, firmwareLevels, logs, here, now } = question;
  const ofChain = knownOfChain(chain, snapshot.context.symptom, settings, firmwareLevels);
  const made = planWithLikely(snapshot, {
    known: { ...ofChain, intake, facts: factsOfLogs(logs, chain), today: now.slice(0, 10) },
    chainVersion,
    here,
    table: tableOf(settings.faultModel),
    ownChanges: settings.ownChanges,
    now,
  });
  return { id, ...made, findings: ofChain.findings };
}
