import { placeKey } from '../../shared/chain/place.ts';
import type { PlanReply } from '../../shared/contract/plan.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import { chainKey } from '../../shared/isolation/components.ts';
import { outside } from '../../shared/isolation/failure-modes.ts';
import { currentWait } from '../../state-machines/triage/record.ts';
import { runningUnattended } from '../../state-machines/triage/unattended.ts';
import type { Fault } from '../support/house/faults.ts';
import { House } from '../support/house/house.ts';
import { rarePerHour, toldOf } from '../support/house/told.ts';
import { isObservation, Technician } from '../support/technician.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import type { DatabaseKind } from '../support/test-database.ts';
import { bodyOf } from '../support/tickets.ts';
import type { PlayedCase } from './cases.ts';
import { Days } from './days.ts';

export type PlayedEnd = {
  name: string;
  /** `truth`: what was wrong is so no more. `handOver`: with reason, and what is wrong was not ruled out. */
  end: 'truth' | 'handOver' | 'wrong' | 'stranded';
  what: string;
  steps: number;
  minutes: number;
  told: string[];
};

const mostSteps = 60;
const mostTurns = 500;
/** What is wrong has to be among so many of the first suspects for a hand-over to make sense. */
const leading = 3;

class Play {
  readonly #test: TestApp;
  readonly #case: PlayedCase;
  readonly #house: House;
  readonly #technician: Technician;
  readonly #told: string[] = [];
  #nowMs = Date.parse('2026-11-02T08:00:00.000Z');
  #ticketId = '';
  #steps = 0;
  #days: Days | null = null;
  #suspects: PlanReply['suspects'] = [];

  constructor(test: TestApp, played: PlayedCase) {
    this.#test = test;
    this.#case = played;
    this.#house = new House({ chain: played.chain, faults: played.faults, seed: played.seed });
    this.#technician = new Technician(this.#house);
  }

  async end(): Promise<PlayedEnd> {
    this.#test.setNow(new Date(this.#nowMs));
    let ticket = await this.#open();
    for (let turn = 0; turn < mostTurns; turn += 1) {
      const { state, triage } = ticket;
      if (state === 'closed') return this.#judged(triage, 'closed');
      if (state.startsWith('escalated')) return this.#judged(triage, 'escalated');
      if (currentWait(triage)?.kind === 'part') return this.#judged(triage, 'waiting');
      if (this.#steps >= mostSteps) return this.#ended('stranded', `no end after ${mostSteps} steps`);
      const next = await this.#turn(ticket);
      if ('stranded' in next) return this.#ended('stranded', next.stranded);
      ticket = next;
    }
    return this.#ended('stranded', 'the watches never end');
  }

  async #open(): Promise<Ticket> {
    const { dispatcher, technician } = this.#test.home;
    const { chain, symptom, faults, intake = {}, patternUntold = false } = this.#case;
    const site = {
      client: 'Family Overwell',
      address: '1 Mill Lane',
      contact: { phone: '+44 1632 960 143' },
    };
    const { id: siteId } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
    const made = await dispatcher.post(`/sites/${siteId}/chains`, { body: chain });
    const { id: chainId } = bodyOf<{ id: string }>(made, 201);
    const [first] = faults;
    const told = first === undefined || patternUntold ? {} : toldOf(first);
    const body = {
      siteId,
      chainId,
      assigneeId: technician.id,
      intake: { symptom: { kind: symptom, ...told }, ...intake },
    };
    const ticket = bodyOf<Ticket>(await dispatcher.post('/tickets', { body }), 201);
    this.#ticketId = ticket.id;
    return ticket;
  }

  /** Asks the plan and does what it offers; the ticket as it is then. */
  async #turn(ticket: Ticket): Promise<Ticket | { stranded: string }> {
    const { technician } = this.#test.home;
    const address = `/tickets/${this.#ticketId}`;
    await this.#betweenVisits(ticket.triage);
    const plan = bodyOf<PlanReply>(await technician.get(`${address}/plan?people=2`), 200);
    this.#suspects = plan.suspects;
    const turn = this.#technician.next(plan, ticket.triage);
    if ('stranded' in turn) return turn;
    this.#pass(turn.waitMin);
    if (turn.offer === null) return ticket;
    if (!isObservation(turn.offer)) this.#steps += 1;
    this.#told.push(`${plan.state}: ${turn.offer.key}`);
    let after = ticket;
    for (const command of turn.commands) {
      const reply = await technician.post(`${address}/commands`, { body: command });
      if (reply.status !== 200) {
        return { stranded: `${turn.offer.key} was offered and answered ${reply.status}: ${reply.text}` };
      }
      const before = after.triage;
      after = reply.body as Ticket;
      this.#technician.took([command], before, after.triage);
    }
    return after;
  }

  /** Where the ticket waits for days, or a change is left in for them, they pass: the client has a diary meanwhile. */
  async #betweenVisits(record: TriageRecord): Promise<void> {
    const until = currentWait(record)?.until ?? runningUnattended(record)?.until;
    if (until === undefined || Date.parse(until) <= this.#nowMs) return;
    this.#days ??= new Days(this.#test, this.#house, this.#ticketId);
    await this.#days.open(this.#nowMs, Date.parse(until));
    this.#nowMs = await this.#days.pass(this.#nowMs, Date.parse(until));
  }

  #pass(minutes: number): void {
    this.#nowMs += Math.round(minutes * 60_000);
    this.#test.setNow(new Date(this.#nowMs));
    this.#technician.passed(minutes);
  }

  #judged(record: TriageRecord, how: 'closed' | 'escalated' | 'waiting'): PlayedEnd {
    if (how === 'closed' && this.#house.isQuiet) return this.#ended('truth', record.remedy?.kind ?? '');
    const isJustified =
      how === 'closed' ? record.remedy?.kind === 'noFaultFound' && this.#isRare : this.#isJustified;
    return this.#ended(isJustified ? 'handOver' : 'wrong', `${how} ${record.remedy?.kind ?? ''}`);
  }

  get #isRare(): boolean {
    return this.#house.faults.every(
      ({ rhythm }) => rhythm.kind === 'random' && rhythm.perHour <= rarePerHour,
    );
  }

  /**
   * Nothing that is wrong was ruled out: it is too rare to be seen, or is among the first suspects; so is, for what lies
   * in no one part, that it lies in all of them together or outside.
   */
  get #isJustified(): boolean {
    const first = this.#suspects.slice(0, leading).map(({ component }) => component);
    const isNamed = ({ at }: Fault): boolean =>
      at.kind === 'chain'
        ? first.includes(chainKey) || first.includes(outside)
        : first.includes(placeKey(at));
    return this.#isRare || this.#house.faults.some(isNamed);
  }

  #ended(end: PlayedEnd['end'], what: string): PlayedEnd {
    const minutes = (this.#nowMs - Date.parse('2026-11-02T08:00:00.000Z')) / 60_000;
    return { name: this.#case.name, end, what, steps: this.#steps, minutes, told: this.#told };
  }
}

/** Plays a case over HTTP: a technician who does exactly what the plan offers, in a house where that is wrong. */
export const playCase = (test: TestApp, played: PlayedCase): Promise<PlayedEnd> =>
  new Play(test, played).end();

/** An application for played cases: the clock moves by days, and nobody signs in again. */
export const openCasesApp = (kind: DatabaseKind = 'embedded'): Promise<TestApp> =>
  openTestApp(kind, { accessTokenS: 10 * 366 * 86_400 });
