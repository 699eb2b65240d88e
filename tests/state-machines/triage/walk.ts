import { sourcesOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { Offer, PlanReply } from '../../../shared/contract/plan.ts';
import { symptomKinds } from '../../../shared/contract/triage.ts';
import { verdicts } from '../../../shared/contract/triage-names.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import { currentWait } from '../../../state-machines/triage/record.ts';
import { anyFault, type Fault, oneOf } from '../../support/house/faults.ts';
import { House } from '../../support/house/house.ts';
import { toldOf } from '../../support/house/told.ts';
import { randomFrom } from '../../support/random.ts';
import { type Sent as Command, isObservation, Technician, type Turn } from '../../support/technician.ts';
import { untoldPattern } from '../../support/untold-pattern.ts';
import { answerOfSecondLine, interrupt } from './interruptions.ts';
import { WalkedTicket } from './walked-ticket.ts';

export type WalkEnd = {
  kind: 'closed' | 'escalated' | 'waiting' | 'stranded';
  /** What is wrong with it, where it is stranded. */
  why: string;
  steps: number;
  minutes: number;
  /** What was done, one line a turn. */
  told: string[];
};

/** A walk ends within so many steps; what is only noted during a watch is part of the watch. */
export const mostSteps = 60;
const mostTurns = 600;
const mostInterruptions = 3;
/** Chances, a step: something comes in between; another offer than the advised one is taken. */
const interruptedShare = 0.05;
const wandersShare = 0.1;
/** Chances: an observer who sees wrongly, a verdict given by hand, a case that second line sends back. */
const poorObserverShare = 0.2;
const byHandShare = 0.1;
const sentBackShare = 0.4;
/** The chance, a turn, that nobody ever comes back to a ticket that waits. */
const staysWaitingShare = 0.3;

/** One technician who does blindly what the plan offers, in a house drawn from a seed. */
export class Walk {
  readonly #chain: Chain;
  readonly #random: () => number;
  readonly #technician: Technician;
  readonly #ticket: WalkedTicket;
  readonly #seen = new Set<string>();
  readonly #told: string[];
  #here: Circumstances;
  #steps = 0;
  #interruptions = 0;

  constructor(chain: Chain, seed: number) {
    const random = randomFrom(seed);
    const faults =
      random() < 0.15 ? [anyFault(chain, random), anyFault(chain, random)] : [anyFault(chain, random)];
    const observerError = random() < poorObserverShare ? 0.25 : 0.02;
    this.#chain = chain;
    this.#random = random;
    this.#technician = new Technician(new House({ chain, faults, seed, observerError }), (offers) =>
      this.#oneOf(offers),
    );
    const symptom = { kind: oneOf(symptomKinds, random), lastsS: null, ...toldIn(chain, faults, random) };
    const sources = sourcesOf(chain).map(({ id }) => id);
    this.#ticket = new WalkedTicket(chain, symptom, {
      affectedSources: random() < 0.3 ? [oneOf(sources, random)] : [],
      affectedDisplays: [],
      content: oneOf(['notKnown', 'any', 'highRateOnly', 'protectedOnly'] as const, random),
      workedBefore: oneOf([true, false, null], random),
    });
    this.#here = { kit: random() < 0.3 ? [] : null, people: random() < 0.6 ? 1 : 2, refused: [] };
    this.#told = [JSON.stringify(faults), JSON.stringify(symptom)];
  }

  end(): WalkEnd {
    for (let turn = 0; turn < mostTurns; turn += 1) {
      const end = this.#turn();
      if (end !== null) return end;
    }
    return this.#stranded('the watches never end');
  }

  /** One turn of the walk; an end, where it comes to one. */
  #turn(): WalkEnd | null {
    const { state } = this.#ticket;
    if (state === 'closed') return this.#ended('closed');
    if (state.startsWith('escalated.') && state !== 'escalated.moreRequested') return this.#withSecondLine();
    if (state === 'waiting' && this.#random() < staysWaitingShare) return this.#ended('waiting');
    if (state === 'waiting') return this.#whileWaiting();
    this.#maybeInterrupt();
    if (this.#ticket.state !== state) return null;
    if (this.#steps >= mostSteps) return this.#stranded(`no end after ${mostSteps} steps`);
    const plan = this.#ticket.plan(this.#here);
    const broken = this.#whatIsWrong(plan);
    if (broken !== null) return this.#stranded(broken);
    const turn = this.#technician.next(plan, this.#ticket.record);
    return 'stranded' in turn ? this.#stranded(turn.stranded) : this.#take(turn, plan);
  }

  /** Whoever wanders goes on with the ticket; handing it over unasked is an interruption. */
  #oneOf(offers: readonly Offer[]): Offer | undefined {
    const others = offers.filter(({ steps }) => !steps.some(({ type }) => type === 'escalate'));
    return others.length > 1 && this.#random() < wandersShare ? oneOf(others, this.#random) : offers[0];
  }

  /** Something is offered, each thing once, and every offer is accepted as it was made. */
  #whatIsWrong({ offers, state }: PlanReply): string | null {
    if (offers.length === 0) return `nothing is offered in ${state}`;
    const keys = offers.map(({ key }) => key);
    if (new Set(keys).size < keys.length) return `offered twice in ${state}: ${keys.join('; ')}`;
    for (const offer of offers) {
      const refusal = this.#ticket.refusalOf(offer);
      if (refusal !== null) return `${offer.key} is offered and refused in ${state}: ${refusal}`;
    }
    return null;
  }

  #take({ waitMin, offer, commands }: Turn, { state }: PlanReply): WalkEnd | null {
    this.#pass(waitMin);
    if (offer === null) {
      this.#told.push(`${state}: waits ${Math.round(waitMin)} min`);
      return null;
    }
    const pair = `${JSON.stringify(this.#ticket.record)} ${offer.key}`;
    if (this.#seen.has(pair)) return this.#stranded(`the same record again with ${offer.key}`);
    this.#seen.add(pair);
    if (!isObservation(offer)) this.#steps += 1;
    this.#told.push(`${state}: ${offer.key}`);
    for (const command of commands) {
      const before = this.#ticket.record;
      const refused = this.#ticket.send(this.#byHand(command));
      if (refused !== null) return this.#stranded(`${command.type} is refused when taken: ${refused}`);
      this.#technician.took([command], before, this.#ticket.record);
    }
    return null;
  }

  /** Now and then a verdict is given by hand, and a wrong one. */
  #byHand(command: Command): Command {
    if (command.type !== 'judgeRetest' || this.#random() > byHandShare) return command;
    return { ...command, override: { verdict: oneOf(verdicts, this.#random), reason: 'By eye' } };
  }

  #maybeInterrupt(): void {
    if (this.#interruptions >= mostInterruptions || this.#random() > interruptedShare) return;
    this.#interruptions += 1;
    this.#pass(1);
    const before = this.#ticket.record;
    const what = this.#random() < 0.3 ? this.#clientRefuses() : interrupt(this.#ticket, this.#random);
    this.#technician.took([], before, this.#ticket.record);
    this.#told.push(`! ${what}`);
  }

  #clientRefuses(): string {
    const tests = this.#ticket.plan(this.#here).offers.flatMap(({ test }) => (test === null ? [] : [test]));
    const [test] = tests;
    if (test === undefined) return 'nothing to refuse';
    const refused = { test: test.kind, ...(this.#random() < 0.5 ? { place: test.target } : {}) };
    this.#here = { ...this.#here, refused: [...this.#here.refused, refused] } as Circumstances;
    return `the client won’t have ${JSON.stringify(refused)}`;
  }

  /** Second line keeps the case, which ends the walk, or does something with it, and the walk goes on. */
  #withSecondLine(): WalkEnd | null {
    const question = this.#ticket.record.escalations.at(-1)?.question ?? '';
    if (question === '') return this.#stranded('handed over without a question');
    if (this.#interruptions >= mostInterruptions || this.#random() > sentBackShare)
      return this.#ended('escalated');
    this.#interruptions += 1;
    this.#pass(60);
    const isRecalled = this.#random() < 0.2;
    if (isRecalled && this.#ticket.send({ type: 'recall', reason: 'It can be done here' }) === null) {
      this.#told.push('! recall');
      return null;
    }
    this.#ticket.send({ type: 'takeCase' }, 'support');
    const answer = answerOfSecondLine(this.#chain, this.#random);
    if (this.#ticket.send(answer, 'support') !== null) return this.#ended('escalated');
    this.#told.push(`! ${JSON.stringify(answer)}`);
    return null;
  }

  /** A named thing is waited for, which ends the walk, or it has come, and the walk goes on. */
  #whileWaiting(): WalkEnd | null {
    const wait = currentWait(this.#ticket.record);
    const minutes = wait === null ? 0 : (Date.parse(wait.until) - Date.parse(this.#ticket.now)) / 60_000;
    if (wait === null || wait.what === '' || minutes <= 0) return this.#stranded('waits for nothing');
    if (this.#interruptions >= mostInterruptions || this.#random() > sentBackShare)
      return this.#ended('waiting');
    this.#interruptions += 1;
    this.#pass(minutes);
    const refused = this.#ticket.send({ type: 'resumeWork', note: '' });
    this.#told.push(`! ${wait.kind} has come`);
    return refused === null ? null : this.#stranded(`work can't be resumed: ${refused}`);
  }

  #pass(minutes: number): void {
    this.#ticket.pass(minutes);
    this.#technician.passed(minutes);
  }

  #ended(kind: WalkEnd['kind'], why = ''): WalkEnd {
    return { kind, why, steps: this.#steps, minutes: this.#ticket.minutes, told: this.#told };
  }
  #stranded(why: string): WalkEnd {
    return this.#ended('stranded', why);
  }
}

/** What the client tells of how it comes: mostly what is so, at times something else, or nothing. */
function toldIn(chain: Chain, [fault]: readonly Fault[], random: () => number) {
  const told = random();
  if (fault === undefined || told < 0.2) return { perHour: null, ...untoldPattern };
  return toldOf(told < 0.4 ? anyFault(chain, random) : fault);
}
