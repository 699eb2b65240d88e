import type {
  ChangeRecord,
  Escalation,
  Judgement,
  Occurrence,
  SetAside,
  SideObservation,
  TriageRecord,
  Watch,
} from '../../../../shared/contract/triage.ts';
import { asWritten } from './as-written.ts';
import { type ChainThen, chainAsToday } from './chain-as-today.ts';
import { type ChangeKind, changeKinds } from './change-kinds.ts';
import { type SymptomThen, symptomAsToday } from './symptom.ts';

type JudgementThen = Omit<Judgement, 'level' | 'needed' | 'figures' | 'reported' | 'reasons' | 'warnings'> & {
  reasons: string[];
  warnings: string[];
};
type ChangeThen = Omit<
  ChangeRecord,
  keyof (typeof changeKinds)['reseat'] | 'own' | 'earlierJudgements' | 'judgement'
> & {
  judgement: JudgementThen | null;
};
type EscalationThen = Omit<Escalation, 'waived'>;
type OccurrenceThen = Omit<Occurrence, 'corrections'>;
type WatchThen = Omit<Watch, 'voided' | 'occurrences' | keyof typeof watchNotSaid> & {
  occurrences: OccurrenceThen[];
};
type SideThen = Omit<SideObservation, 'superseded' | 'proof'> & { watchIds: string[]; occurrences: number };
type AsFoundThen = Omit<NonNullable<TriageRecord['asFound']>, 'chain'> & { chain: ChainThen };
type ClosingThen = Omit<NonNullable<TriageRecord['closing']>, 'proof'>;
type SetAsideThen = Omit<SetAside, 'quietProof' | 'closing'> & { closing: ClosingThen | null };
type AuditThen = Omit<NonNullable<TriageRecord['audit']>, 'findings'> & {
  mustFix: number;
  shouldFix: number;
};

/** The record as version 1 held it in snapshots, in the case file of a packet, and on the phone. */
export type WholeRecordThen = Omit<
  TriageRecord,
  | 'settings'
  | 'symptom'
  | 'audit'
  | 'asFound'
  | 'watches'
  | 'sides'
  | 'withoutSide'
  | 'looks'
  | 'changes'
  | 'escalations'
  | 'closing'
  | 'quietProof'
  | 'setAside'
  | 'diaries'
  | 'reports'
  | 'unattended'
  | 'waits'
  | 'choices'
  | 'leavingCheck'
  | 'followUp'
> & {
  settings: { risk: number; reopenDays: number };
  symptom: SymptomThen;
  audit: AuditThen | null;
  asFound: AsFoundThen | null;
  watches: WatchThen[];
  sides: SideThen[];
  changes: ChangeThen[];
  escalations: EscalationThen[];
  closing: ClosingThen | null;
  setAside: SetAsideThen[];
};

/**
 * A record of version 1 as today's, where there is no log to read it from. What it had written over is lost: a change
 * has no earlier judgements.
 */
export function recordAsToday(then: WholeRecordThen): TriageRecord {
  const level = then.settings.risk;
  const quietProof = (remedy: TriageRecord['remedy']): TriageRecord['quietProof'] =>
    remedy?.kind === 'noFaultFound'
      ? { watchedMin: 'notRecorded', neededMin: 'notRecorded', counted: null, level, figures: 'notRecorded' }
      : null;
  return {
    ...then,
    settings: { revision: 'notRecorded', ...then.settings },
    symptom: symptomAsToday(then.symptom),
    audit: auditAsToday(then.audit),
    asFound: then.asFound && { ...then.asFound, chain: chainAsToday(then.asFound.chain) },
    watches: then.watches.map(watchAsToday),
    sides: then.sides.map(sideAsToday),
    withoutSide: null,
    looks: [],
    changes: then.changes.map((change) => ({
      ...change,
      ...changeKinds[change.kind as ChangeKind],
      own: null,
      judgement: change.judgement === null ? null : judgementAsToday(change.judgement, level),
      earlierJudgements: [],
      oneOfTwo: null,
      enteredLate: null,
    })),
    escalations: then.escalations.map(escalationAsToday),
    diaries: [],
    reports: [],
    unattended: [],
    closing: closingAsToday(then.closing),
    quietProof: quietProof(then.remedy),
    waits: [],
    choices: [],
    leavingCheck: null,
    followUp: null,
    setAside: then.setAside.map((each) => ({
      ...each,
      closing: closingAsToday(each.closing),
      quietProof: quietProof(each.remedy),
    })),
  };
}

/** In version 1 a side always rested on a menu. */
const sideAsToday = ({ watchIds, occurrences, ...side }: SideThen): SideObservation => ({
  ...side,
  proof: { kind: 'menu', watchIds, occurrences },
  superseded: null,
});

/** What version 1 asked nobody about a watch. */
export const watchNotSaid = {
  triggerKind: null,
  conditions: { sincePowerOnMin: null, asTold: null, content: null },
} as const;

/** Version 1 put no moment right, and voided no watch. */
const watchAsToday = (then: WatchThen): Watch => ({
  ...then,
  ...watchNotSaid,
  voided: null,
  occurrences: then.occurrences.map((each) => ({ ...each, corrections: [] })),
});

function auditAsToday(then: AuditThen | null): TriageRecord['audit'] {
  if (then === null) return null;
  const { mustFix, shouldFix, ...rest } = then;
  return { ...rest, findings: { notRecorded: true, mustFix, shouldFix } };
}

const judgementAsToday = (then: JudgementThen, level: number): Judgement => ({
  ...then,
  level,
  reported: null,
  needed: 'notRecorded',
  figures: 'notRecorded',
  reasons: then.reasons.map(asWritten),
  warnings: then.warnings.map(asWritten),
});

/** That a case was sent again, version 1 said in a sentence; today its outcome says it. */
const escalationAsToday = ({ outcome, ...rest }: EscalationThen): Escalation => ({
  ...rest,
  waived: 'notRecorded',
  outcome: outcome?.kind === 'resubmitted' ? { ...outcome, text: '' } : outcome,
});

const closingAsToday = (then: ClosingThen | null): TriageRecord['closing'] =>
  then === null ? null : { ...then, proof: 'notRecorded' };
