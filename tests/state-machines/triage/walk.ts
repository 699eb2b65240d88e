import type { Chain } from '../../../shared/contract/chain.ts';
import { lastedAnswers } from '../../../shared/contract/diary-names.ts';
import type { Offer, PlanReply } from '../../../shared/contract/plan.ts';
import { changeKinds } from '../../../shared/contract/triage-names.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import { currentWait } from '../../../state-machines/triage/record.ts';
import { runningUnattended } from '../../../state-machines/triage/unattended.ts';
import { anyFault, oneOf } from '../../support/house/faults.ts';
import { House } from '../../support/house/house.ts';
import { randomFrom } from '../../support/random.ts';
import { isObservation, Technician, type Turn, withSampleWords } from '../../support/technician.ts';
import { answerOfSecondLine, anyWish, changeByHand, grant, interrupt, type Wish } from './interruptions.ts';
import { anyKit, asAnswered, type Errs, intakeOf, ownChanges } from './walk-answers.ts';
import * as often from './walk-chances.ts';
import { endOf, Met } from './walk-met.ts';
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
const clientsChoices: ReadonlySet<string> = new Set(['recordChoice', 'chooseRemedy']);
const dayMin = 1440;

/** One technician who does blindly what the plan offers, in a house drawn from a seed. */
export class Walk {
  readonly #chain: Chain;
  readonly #random: () => number;
  readonly #house: House;
  readonly #technician: Technician;
  readonly #ticket: WalkedTicket;
  readonly #met: Met;
  readonly #errs: Errs;
  /** A kind of change that the technician makes by their own choice, once it applies. */
  #wanted: (typeof changeKinds)[number] | null;
  /** What else this walk wants to see, once it is taken. */
  #wish: Wish | null;
  readonly #seen = new Set<string>();
  readonly #told: string[];
  #here: Circumstances;
  #steps = 0;
  #interruptions = 0;

  constructor(chain: Chain, seed: number, met = new Met()) {
    const random = randomFrom(seed);
    const faults =
      random() < 0.15 ? [anyFault(chain, random), anyFault(chain, random)] : [anyFault(chain, random)];
    const observerError = random() < often.poorObserverShare ? 0.25 : 0.02;
    this.#chain = chain;
    this.#random = random;
    this.#met = met;
    this.#errs = { chain, random, misreads: observerError, byHand: often.byHandShare };
    this.#house = new House({ chain, faults, seed, observerError });
    this.#technician = new Technician(this.#house, (offers) => this.#oneOf(offers));
    const intake = intakeOf(chain, faults, random);
    const { symptom } = intake;
    const wanted = random() < 0.5 ? oneOf(often.rareChanges, random) : oneOf(changeKinds, random);
    const isOld = wanted === 'updateFirmware' || random() < often.oldFirmwareShare;
    this.#wanted = wanted;
    this.#wish = random() < often.wishesShare ? anyWish(random) : null;
    this.#ticket = new WalkedTicket(chain, intake, {
      ownChanges: random() < often.ownKindsShare ? ownChanges : [],
      firmwareBelowLevel: isOld ? chain.devices.map(({ id }) => id) : [],
      met,
    });
    this.#here = { kit: anyKit(random), people: random() < 0.6 ? 1 : 2, refused: [] };
    if (random() < often.diaryShare) this.#ticket.openDiary(30);
    this.#told = [JSON.stringify(faults), JSON.stringify(symptom)];
    met.intake(symptom, intake.content);
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
    this.#met.count('state', state);
    if (state === 'closed') return this.#onceClosed();
    if (state.startsWith('escalated.') && state !== 'escalated.moreRequested') return this.#withSecondLine();
    if (state === 'waiting') return this.#whileWaiting();
    this.#maybeInterrupt();
    this.#grantWish();
    if (this.#ticket.state !== state) return null;
    if (this.#steps >= mostSteps) return this.#stranded(`no end after ${mostSteps} steps`);
    if (state === 'substitute.ready' && this.#changesByHand()) return null;
    this.#letUnattendedPass();
    const plan = this.#ticket.plan(this.#here);
    const broken = this.#whatIsWrong(plan);
    if (broken !== null) return this.#stranded(broken);
    const turn = this.#technician.next(plan, this.#ticket.record);
    return 'stranded' in turn ? this.#stranded(turn.stranded) : this.#take(turn, plan);
  }

  /**
   * Whoever wanders goes on with the ticket; handing it over unasked is an interruption. What is the client's to choose
   * may be any: the way on, and how it ends.
   */
  #oneOf(offers: readonly Offer[]): Offer | undefined {
    const theirs = offers.filter(
      ({ steps: [first] }) => first !== undefined && clientsChoices.has(first.type),
    );
    if (this.#wish === 'recordFollowUp') {
      const onSuspicion = theirs.find(({ steps }) => steps.some(({ type }) => type === 'replaceOnSuspicion'));
      if (onSuspicion !== undefined) return onSuspicion;
    }
    if (theirs.length > 1) return oneOf(theirs, this.#random);
    const others = offers.filter(({ steps }) => !steps.some(({ type }) => type === 'escalate'));
    return others.length > 1 && this.#random() < often.wandersShare ? oneOf(others, this.#random) : offers[0];
  }

  /** The technician has an idea of their own, and makes that change: once, of the kind that this walk wants to see. */
  #changesByHand(): boolean {
    if (this.#wanted === null || this.#random() > often.ownChangeShare) return false;
    const made = changeByHand(this.#ticket, this.#wanted, this.#random);
    if (made === null) return false;
    this.#wanted = null;
    this.#steps += 1;
    this.#told.push(`! by hand: ${made}`);
    return made === 'declareChange';
  }

  /** Something is offered, each thing once, and every offer is accepted as it was made. */
  #whatIsWrong({ offers, state }: PlanReply): string | null {
    if (offers.length === 0) return `nothing is offered in ${state}`;
    const keys = offers.map(({ key }) => key);
    if (new Set(keys).size < keys.length) return `offered twice in ${state}: ${keys.join('; ')}`;
    for (const offer of offers) {
      for (const { type, kind } of offer.steps) {
        this.#met.count('offered', type);
        if (type === 'declareChange') this.#met.count('changeOffered', String(kind));
      }
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
      const refused = this.#ticket.send(asAnswered(command, this.#errs));
      if (refused !== null) return this.#stranded(`${command.type} is refused when taken: ${refused}`);
      this.#technician.took([command], before, this.#ticket.record);
    }
    return null;
  }

  #maybeInterrupt(): void {
    if (this.#interruptions >= mostInterruptions || this.#random() > often.interruptedShare) return;
    this.#interruptions += 1;
    this.#pass(1);
    const before = this.#ticket.record;
    const what = this.#random() < 0.3 ? this.#clientRefuses() : interrupt(this.#ticket, this.#random);
    this.#technician.took([], before, this.#ticket.record);
    this.#told.push(`! ${what}`);
  }

  #grantWish(): void {
    if (this.#wish === null || this.#random() > often.grantedShare) return;
    const before = this.#ticket.record;
    const what = grant(this.#ticket, this.#wish, this.#random);
    if (what === null) return;
    this.#wish = null;
    this.#steps += 1;
    this.#technician.took([], before, this.#ticket.record);
    this.#told.push(`! as wished: ${what}`);
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
    const broken = this.#whatIsWrong(this.#ticket.plan(this.#here));
    if (broken !== null) return this.#stranded(broken);
    if (this.#interruptions >= mostInterruptions || this.#random() > often.sentBackShare)
      return this.#ended('escalated');
    this.#interruptions += 1;
    this.#pass(60);
    const isRecalled = this.#wish === 'recall' || this.#random() < 0.2;
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
    const broken = this.#whatIsWrong(this.#ticket.plan(this.#here));
    if (broken !== null) return this.#stranded(broken);
    const isOver = this.#interruptions >= mostInterruptions || this.#random() > often.sentBackShare;
    if (isOver || this.#random() < often.staysWaitingShare) return this.#ended('waiting');
    this.#interruptions += 1;
    this.#letDaysPass(Math.min(minutes, 20 * dayMin * this.#random()));
    if (wait.kind === 'part') this.#here = { ...this.#here, kit: null };
    const refused = this.#ticket.send({ type: 'resumeWork', note: '' });
    this.#told.push(`! ${wait.kind} has come`);
    return refused === null ? null : this.#stranded(`work can't be resumed: ${refused}`);
  }

  /** It stays closed, which ends the walk, or something is heard of it: then it may be opened again. */
  #onceClosed(): WalkEnd | null {
    const plan = this.#ticket.plan(this.#here);
    // All was heard of it, and it is too late to open it again.
    if (plan.offers.length === 0) return this.#ended('closed');
    const broken = this.#whatIsWrong(plan);
    if (broken !== null) return this.#stranded(broken);
    const isHeardOf = this.#wish === 'recordFollowUp' || this.#random() < often.heardAgainShare;
    if (this.#interruptions >= mostInterruptions || !isHeardOf) return this.#ended('closed');
    this.#interruptions += 1;
    this.#letDaysPass(dayMin * (1 + 20 * this.#random()));
    const then = this.#ticket.plan(this.#here);
    if (then.offers.length === 0) return this.#ended('closed');
    const wished = then.offers.filter(({ steps }) => steps.some(({ type }) => type === this.#wish));
    const offer = oneOf(wished.length > 0 ? wished : then.offers, this.#random);
    this.#told.push(`! closed: ${offer.key}`);
    return this.#take({ waitMin: 0, offer, commands: withSampleWords(offer) }, then);
  }

  /** A change is left in until its day, or until somebody comes by earlier. */
  #letUnattendedPass(): void {
    const running = runningUnattended(this.#ticket.record);
    if (running === null) return;
    const minutes = (Date.parse(running.until) - Date.parse(this.#ticket.now)) / 60_000;
    if (minutes <= 0) return;
    this.#told.push(`! left in for ${Math.round(minutes / dayMin)} days`);
    this.#letDaysPass(this.#random() < 0.8 ? minutes : minutes * this.#random());
  }

  /** Days go by without anybody on site; a client with a diary reports most of what they notice. */
  #letDaysPass(minutes: number): void {
    let left = minutes;
    for (let reports = 0; reports < often.mostReports; reports += 1) {
      const seenAfter = this.#house.untilSeen(left);
      if (seenAfter === null) break;
      this.#pass(seenAfter);
      left -= seenAfter;
      if (this.#random() < often.reportsShare)
        this.#ticket.report(this.#random() < 0.5 ? null : oneOf(lastedAnswers, this.#random));
    }
    this.#pass(Math.max(0, left));
  }

  #pass(minutes: number): void {
    this.#ticket.pass(minutes);
    this.#technician.passed(minutes);
  }

  #ended(kind: WalkEnd['kind'], why = ''): WalkEnd {
    const { record } = this.#ticket;
    this.#met.record(record);
    this.#met.count('end', endOf(kind, record));
    return { kind, why, steps: this.#steps, minutes: this.#ticket.minutes, told: this.#told };
  }
  #stranded(why: string): WalkEnd {
    return this.#ended('stranded', why);
  }
}
