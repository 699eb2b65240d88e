import { ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { lookMoments, sideProofKinds, witnessAnswers } from '../../../shared/contract/look-names.ts';
import type { Symptom, TriageRecord } from '../../../shared/contract/triage.ts';
import {
  actingParties,
  changeKinds,
  checkAnswers,
  choiceWays,
  contentKinds,
  followUpOutcomes,
  lateFindings,
  onlyWithKinds,
  patternKinds,
  patternTriggers,
  symptomKinds,
  verdicts,
  waitingKinds,
  watchModes,
  watchPurposes,
  whatChangedKinds,
  workingStates,
} from '../../../shared/contract/triage-names.ts';
import { currentWait } from '../../../state-machines/triage/record.ts';

/** What walks have to meet, list by list: everything that the contract has a name for, and the ends of a walk. */
export const toMeet = {
  symptom: symptomKinds,
  pattern: [...patternKinds, 'notKnown'],
  trigger: patternTriggers,
  onlyWith: onlyWithKinds,
  content: contentKinds,
  whatChanged: whatChangedKinds,
  state: [...workingStates, 'waiting', 'closed'],
  watchMode: watchModes,
  watchPurpose: watchPurposes,
  look: ['signal', 'menu', 'portMode', 'setting', 'witness'],
  lookMoment: lookMoments,
  witness: witnessAnswers,
  sideProof: sideProofKinds,
  verdict: verdicts,
  verdictByHand: verdicts,
  changeOffered: changeKinds,
  changeMade: changeKinds,
  changeEnd: ['restored', 'kept', 'withdrawn'],
  lateFinding: lateFindings,
  offered: ticketCommandTypes,
  sent: ticketCommandTypes,
  choice: choiceWays,
  followUp: followUpOutcomes,
  check: checkAnswers,
  waitsFor: waitingKinds,
  actor: actingParties,
  end: [
    'closed permanent',
    'closed workaround',
    'closed noFaultFound',
    'closed onSuspicion',
    'escalated',
    ...waitingKinds.map((kind) => `waiting ${kind}`),
  ],
} as const satisfies Record<string, readonly string[]>;
export type List = keyof typeof toMeet;

/** How often walks met each thing. */
export class Met {
  readonly #counts = new Map<string, number>();

  count(list: List, item: string): void {
    const key = `${list} ${item}`;
    this.#counts.set(key, (this.#counts.get(key) ?? 0) + 1);
  }

  of = (list: List, item: string): number => this.#counts.get(`${list} ${item}`) ?? 0;

  /** What was never met, as `list item`. */
  missing(): string[] {
    return this.#all()
      .filter(([list, item]) => this.of(list, item) === 0)
      .map(([list, item]) => `${list} ${item}`);
  }

  /** Each list in a line, with how often each of its items was met. */
  lines(): string[] {
    return (Object.keys(toMeet) as List[]).map(
      (list) => `${list}: ${toMeet[list].map((item) => `${item} ${this.of(list, item)}`).join(', ')}`,
    );
  }

  #all(): [List, string][] {
    return (Object.keys(toMeet) as List[]).flatMap((list) =>
      toMeet[list].map((item): [List, string] => [list, item]),
    );
  }

  intake({ kind, pattern, onlyWith }: Symptom, content: string): void {
    this.count('symptom', kind);
    this.count('pattern', pattern.kind);
    if (pattern.kind === 'trigger') this.count('trigger', pattern.trigger);
    if (onlyWith !== null) this.count('onlyWith', onlyWith.kind);
    this.count('content', content);
  }

  /** What a ticket's record tells of its walk. */
  record(record: TriageRecord): void {
    for (const { mode, purpose } of record.watches) {
      this.count('watchMode', mode);
      this.count('watchPurpose', purpose);
    }
    for (const { kind } of record.whatChanged?.answers ?? []) this.count('whatChanged', kind);
    for (const { proof } of record.sides) this.count('sideProof', proof.kind);
    this.#looks(record);
    this.#changes(record);
    for (const { way } of record.choices) this.count('choice', way);
    for (const { heard } of record.followUp?.answers ?? []) this.count('followUp', heard);
    for (const { kind, actor } of record.waits) {
      this.count('waitsFor', kind);
      this.count('actor', actor);
    }
    const check = record.leavingCheck;
    if (check === null) return;
    for (const { answer } of check.pictures) this.count('check', answer);
  }

  #looks({ looks }: TriageRecord): void {
    for (const { what } of looks) {
      this.count('look', what.kind);
      if (what.kind === 'signal') this.count('lookMoment', what.moment);
      if (what.kind === 'witness') this.count('witness', what.answer);
    }
  }

  #changes({ changes }: TriageRecord): void {
    for (const { kind, status, appliedAt, judgement, enteredLate } of changes) {
      if (appliedAt !== null && enteredLate === null) this.count('changeMade', kind);
      this.count('changeEnd', status);
      if (enteredLate !== null) this.count('lateFinding', enteredLate.seen);
      if (judgement !== null)
        this.count(judgement.override === null ? 'verdict' : 'verdictByHand', judgement.verdict);
    }
  }
}

/** How a walk ended, with what was done about it or is waited for. */
export function endOf(kind: string, record: TriageRecord): string {
  if (kind === 'closed') return `closed ${record.remedy?.kind ?? ''}`;
  return kind === 'waiting' ? `waiting ${currentWait(record)?.kind ?? ''}` : kind;
}
