import type { Chain } from '../../../shared/contract/chain.ts';
import { ticketCommand } from '../../../shared/contract/commands.ts';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
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

type Role = 'technician' | 'support';
const settings = organisationSettings.parse({});

/** A ticket on a walk: its snapshot and its clock, what is put to the rules, and what the plan says of it. */
export class WalkedTicket {
  snapshot: TriageSnapshot;
  /** Who is on site. */
  technician = members.technician;
  readonly #chain: Chain;
  readonly #intake: PlanRequest['known']['intake'];
  readonly #known = new Map<string, ReturnType<typeof knownOfChain>>();
  #nowMs = Date.parse(opening.at);
  #ids = 1000;

  constructor(chain: Chain, symptom: Symptom, intake: PlanRequest['known']['intake']) {
    this.#chain = chain;
    this.#intake = intake;
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
    return this.#take(this.#complete(command, role));
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
    this.#take({ type: 'evidenceAdded', evidence, at: this.now, by: this.technician, role: 'technician' });
    return evidence.id;
  }

  #take(command: CompleteCommand): string | null {
    const decision = decide(this.snapshot, command);
    if (!decision.accepted) return decision.refusal.said.code;
    this.snapshot = decision.snapshot;
    return null;
  }

  #complete(command: Command, role: Role): CompleteCommand {
    const stamp = { at: this.now, newId: this.newId, chain: this.#chain, role };
    const complete = completeOf(command as Sent, stamp);
    return role === 'technician' ? { ...complete, by: this.technician } : complete;
  }
}
