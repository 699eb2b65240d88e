import type { Chain } from '../../../shared/contract/chain.ts';
import { ticketCommand } from '../../../shared/contract/commands.ts';
import type { LastedAnswer } from '../../../shared/contract/diary-names.ts';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { Offer, PlanReply } from '../../../shared/contract/plan.ts';
import type { Symptom, TriageRecord } from '../../../shared/contract/triage.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import {
  type CompleteCommand,
  decide,
  knownOfChain,
  openTriage,
  type PlanRequest,
  planTicket,
  stateName,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { type Sent as Command, withSampleWords } from '../../support/technician.ts';
import { completeOf, members, opening, type Sent, uuid } from './triage-events.ts';
import type { Met } from './walk-met.ts';

type Role = 'technician' | 'support';
/** What the organisation has of its own: kinds of change, and devices whose firmware is older than it wants. */
type Organisation = { ownChanges: readonly OwnChange[]; firmwareBelowLevel: string[]; met: Met };
const settings = organisationSettings.parse({});

/** A ticket on a walk: its snapshot and its clock, what is put to the rules, and what the plan says of it. */
export class WalkedTicket {
  snapshot: TriageSnapshot;
  /** Who is on site. */
  technician = members.technician;
  readonly #chain: Chain;
  readonly #intake: PlanRequest['known']['intake'];
  readonly ownChanges: readonly OwnChange[];
  readonly #firmwareBelowLevel: string[];
  readonly #met: Met;
  readonly #known = new Map<string, ReturnType<typeof knownOfChain>>();
  #nowMs = Date.parse(opening.at);
  #ids = 1000;

  constructor(
    chain: Chain,
    { symptom, ...intake }: PlanRequest['known']['intake'] & { symptom: Symptom },
    { ownChanges, firmwareBelowLevel, met }: Organisation,
  ) {
    this.#chain = chain;
    this.#intake = intake;
    this.ownChanges = ownChanges;
    this.#firmwareBelowLevel = firmwareBelowLevel;
    this.#met = met;
    this.snapshot = openTriage({ ...opening, symptom });
  }

  get record(): TriageRecord {
    return this.snapshot.context;
  }
  get state(): string {
    return stateName(this.snapshot);
  }
  get now(): string {
    return new Date(this.#nowMs).toISOString();
  }
  get minutes(): number {
    return (this.#nowMs - Date.parse(opening.at)) / 60_000;
  }
  newId = (): string => uuid(this.#ids++);

  pass(minutes: number): void {
    this.#nowMs += Math.round(minutes * 60_000);
  }

  plan(here: Circumstances): PlanReply {
    return planTicket(this.snapshot, {
      known: {
        ...this.#knownOf(this.record.symptom),
        intake: this.#intake,
        facts: [],
        today: this.now.slice(0, 10),
      },
      chainVersion: 1,
      here,
      ownChanges: this.ownChanges,
      now: this.now,
    });
  }

  /** What the chain itself says changes with the symptom only. */
  #knownOf(symptom: Symptom): ReturnType<typeof knownOfChain> {
    const known = this.#known.get(symptom.kind) ?? knownOfChain(this.#chain, symptom, settings, []);
    this.#known.set(symptom.kind, known);
    return known;
  }

  /** Why an offer would not be taken as it was made; null when it would. */
  refusalOf(offer: Offer): string | null {
    let snapshot = this.snapshot;
    for (const command of withSampleWords(offer)) {
      const parsed = ticketCommand.safeParse(command);
      if (!parsed.success) return `the contract has no such command: ${parsed.error.message}`;
      const decision = decide(snapshot, this.#complete(command, 'technician'));
      if (!decision.accepted) return decision.refusal.said.code;
      snapshot = decision.snapshot;
    }
    return null;
  }

  /** Why a command was refused; null where it was taken. */
  send(command: Command, role: Role = 'technician'): string | null {
    const complete = this.#complete(command, role);
    const refused = this.#take(complete);
    if (refused === null) this.#met.count('sent', command.type);
    return refused;
  }

  /** The client gets a diary, or another once that has run out, and reports by it now, if they have one. */
  openDiary(days: number): void {
    const until = new Date(this.#nowMs + days * 86_400_000).toISOString();
    this.#take({ type: 'diaryOpened', diaryId: this.newId(), until, ...this.#stamp });
  }
  /** @param lasted what the client answers beside it */
  report(lasted: LastedAnswer | null): void {
    const diary = this.record.diaries.findLast(({ until }) => until > this.now);
    if (diary === undefined) return;
    const reportId = this.newId();
    const [diaryId, occurredAt] = [diary.id, this.now];
    this.#take({ type: 'occurrenceReported', reportId, diaryId, occurredAt, ...this.#stamp });
    if (lasted === null) return;
    this.#take({ type: 'reportAnswered', reportId, lasted, cameBack: 'byItself', ...this.#stamp });
  }

  get #stamp() {
    return { at: this.now, by: this.technician, role: 'technician' } as const;
  }

  /** A log as it came in, over all of the ticket's time. */
  addLog(): string {
    const noTie = { deviceId: null, portId: null, linkId: null, watchId: null, changeId: null, shows: null };
    const evidence: EvidenceRef = {
      id: this.newId(),
      kind: 'log',
      sha256: null,
      span: { from: opening.at, to: this.now },
      reading: null,
      at: this.now,
      by: this.technician,
      withdrawn: null,
      tie: noTie,
    };
    this.#take({ type: 'evidenceAdded', evidence, ...this.#stamp });
    return evidence.id;
  }

  #take(command: CompleteCommand): string | null {
    const decision = decide(this.snapshot, command);
    if (!decision.accepted) return decision.refusal.said.code;
    this.snapshot = decision.snapshot;
    return null;
  }

  #complete(command: Command, role: Role): CompleteCommand {
    const { ownChanges } = this;
    const known = { chain: this.#chain, ownChanges, firmwareBelowLevel: this.#firmwareBelowLevel };
    const stamp = { at: this.now, newId: this.newId, role, ...known };
    const complete = completeOf(command as Sent, stamp);
    return role === 'technician' ? { ...complete, by: this.technician } : complete;
  }
}
