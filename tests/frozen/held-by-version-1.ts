import type { Chain } from '../../shared/contract/chain.ts';
import type { Message } from '../../shared/contract/message.ts';
import type {
  ChangeRecord,
  Escalation,
  Judgement,
  SideObservation,
  TriageRecord,
} from '../../shared/contract/triage.ts';

// Today's record without what version 1 did not hold, in the form in which it held the rest. Written by what version 1
// stored, and on its own: nothing of versions/ is used.

type Part = Record<string, unknown> | null;
const without = (part: object | null, ...names: readonly string[]): Part =>
  part === null ? null : Object.fromEntries(Object.entries(part).filter(([name]) => !names.includes(name)));

/** The sentence behind the one code that there is for those of then; any other message is today's, and stays. */
export const sentenceThen = (said: Message): unknown =>
  said.code === 'asWritten' ? said.values.sentence : said;

/** Of a judgement what version 1 would have held. */
export const judgementThen = (today: Judgement | null): Part =>
  today && {
    ...without(today, 'level', 'needed', 'figures', 'reported'),
    reasons: today.reasons.map(sentenceThen),
    warnings: today.warnings.map(sentenceThen),
  };

/**
 * A record as version 1 held it, without what it says of its judgements: today's say it in other words, and take what
 * hangs together into account in the chance of being fooled.
 */
export const withoutReasons = (held: Part): Part => ({
  ...held,
  changes: ((held?.changes ?? []) as { judgement: Part }[]).map((of) => ({
    ...of,
    judgement: without(of.judgement, 'reasons', 'warnings', 'riskOfBeingFooled'),
  })),
});

const change = ({ judgement: today, ...rest }: ChangeRecord): Part => ({
  ...without(
    rest,
    'plainCorrection',
    'canBeUndone',
    'showsCulprit',
    'own',
    'earlierJudgements',
    'enteredLate',
    'oneOfTwo',
  ),
  judgement: judgementThen(today),
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

/** A side always rested on a menu then. */
function side({ proof, ...rest }: SideObservation): Part {
  if (proof.kind !== 'menu') throw new Error('version 1 knew no other proof');
  const { watchIds, occurrences } = proof;
  return { ...without(rest, 'superseded'), watchIds, occurrences };
}

const chainThen = (chain: Chain): Part => ({
  ...chain,
  devices: chain.devices.map((device) => without(device, 'menuSurvivesLossOfInput', 'menuKeepsFormat')),
});

/** Version 1 had one symptom for lost HDR and for wrong colours; of its logs none is of the second. */
const symptomThen = (symptom: TriageRecord['symptom']): Part => ({
  ...without(symptom, 'pattern', 'onlyWith'),
  kind: symptom.kind === 'noHdr' ? 'noHdrOrWrongColour' : symptom.kind,
});

/** @returns today's record as version 1 would have held it */
export function asHeldByVersion1(record: TriageRecord): Part {
  return {
    ...without(
      record,
      'quietProof',
      'diaries',
      'reports',
      'withoutSide',
      'looks',
      'unattended',
      'waits',
      'choices',
      'leavingCheck',
      'followUp',
    ),
    asFound: record.asFound && { ...record.asFound, chain: chainThen(record.asFound.chain) },
    settings: without(record.settings, 'revision'),
    symptom: symptomThen(record.symptom),
    audit: audit(record.audit),
    watches: record.watches.map(({ occurrences, ...rest }) => ({
      ...without(rest, 'voided', 'triggerKind', 'conditions'),
      occurrences: occurrences.map((each) => without(each, 'corrections')),
    })),
    sides: record.sides.map(side),
    changes: record.changes.map(change),
    escalations: record.escalations.map(escalation),
    closing: without(record.closing, 'proof'),
    setAside: record.setAside.map(({ closing, ...rest }) => ({
      ...without(rest, 'quietProof'),
      closing: without(closing, 'proof'),
    })),
  };
}
