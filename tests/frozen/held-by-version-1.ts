import type { ChangeRecord, Escalation, Judgement, TriageRecord } from '../../shared/contract/triage.ts';

// Today's record without what version 1 did not hold, in the form in which it held the rest. Written by what version 1
// stored, and on its own: nothing of versions/ is used.

type Part = Record<string, unknown> | null;
const without = (part: object | null, ...names: readonly string[]): Part =>
  part === null ? null : Object.fromEntries(Object.entries(part).filter(([name]) => !names.includes(name)));

const judgement = (today: Judgement | null): Part => without(today, 'level', 'needed', 'figures');

const change = ({ judgement: today, ...rest }: ChangeRecord): Part => ({
  ...without(rest, 'plainCorrection', 'canBeUndone', 'showsCulprit', 'earlierJudgements'),
  judgement: judgement(today),
});

/** Of a case that was sent again, version 1 said so in a sentence. */
function escalation({ outcome, ...rest }: Escalation): Part {
  const text = `A newer version of the case was sent: ${rest.version + 1}.`;
  const said = outcome?.kind === 'resubmitted' ? { ...outcome, text } : outcome;
  return { ...without(rest, 'waived'), outcome: said };
}

function audit(today: TriageRecord['audit']): Part {
  if (today === null) return null;
  const { findings, ...rest } = today;
  if (Array.isArray(findings)) throw new Error('version 1 kept no findings');
  return { ...rest, mustFix: findings.mustFix, shouldFix: findings.shouldFix };
}

/** @returns today's record as version 1 would have held it */
export function asHeldByVersion1(record: TriageRecord): Part {
  return {
    ...without(record, 'quietProof'),
    settings: without(record.settings, 'revision'),
    audit: audit(record.audit),
    changes: record.changes.map(change),
    escalations: record.escalations.map(escalation),
    closing: without(record.closing, 'proof'),
    setAside: record.setAside.map(({ closing, ...rest }) => ({
      ...without(rest, 'quietProof'),
      closing: without(closing, 'proof'),
    })),
  };
}
