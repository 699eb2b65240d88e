import { isDeepStrictEqual } from 'node:util';
import type { Place } from '../../shared/contract/chain.ts';
import type { Offer, PlanReply } from '../../shared/contract/plan.ts';
import type { ChangeRecord, Symptom, TriageRecord, Watch } from '../../shared/contract/triage.ts';
import { filledIn, standInFor } from '../../state-machines/triage/plan/fill-in.ts';
import { openChange, runningWatch } from '../../state-machines/triage/record.ts';
import type { House } from './house/house.ts';
import { seenIn, type ToLookAt } from './house/looks.ts';
import { seenPatternOf } from './house/told.ts';

export type Sent = { type: string } & Record<string, unknown>;
/** What a technician does next: waits so long, then takes an offer. Without an offer the plan is asked again. */
export type Turn = { waitMin: number; offer: Offer | null; commands: Sent[] };
type Plan = Pick<PlanReply, 'state' | 'offers' | 'watchMin'>;
/** A plan that leaves whoever follows it without a way on. */
export type Stranding = { stranded: string };

/** Longer than anybody's fault stays away; minutes. */
const farOff = 1_000_000;
/** Minutes that one try takes, and that a watch is looked at again after where the plan says nothing. */
const oneTryMin = 2;
const lookAgainMin = 30;
const mostLooks = 4;

const observations: ReadonlySet<string> = new Set(['recordOccurrence', 'recordTry']);
export const isObservation = ({ steps }: Offer): boolean => steps.every(({ type }) => observations.has(type));

/** Words that say nothing, for what a person fills in. */
export function sampleWords(path: string): unknown {
  const standIn = standInFor(path);
  // Whoever looks without a house to look at can't tell.
  if (path.startsWith('what.') || path === 'until') return standIn;
  if (path === 'clientsYes')
    return { ...(standIn as object), name: 'A. Client', whatChanges: 'One input', howToUndo: 'Plug it back' };
  return typeof standIn === 'string' ? `What was seen (${path})` : standIn;
}

/**
 * A technician who does exactly what the plan offers, the advised way unless told to take another: watches as long as
 * the plan says, notes what the house shows, and thinks nothing.
 */
export class Technician {
  readonly #house: House;
  readonly #choose: (offers: readonly Offer[]) => Offer | undefined;
  #seenAfterMin: number | null = null;
  #looks = 0;

  constructor(house: House, choose = (offers: readonly Offer[]) => offers[0]) {
    this.#house = house;
    this.#choose = choose;
  }

  next(plan: Plan, record: TriageRecord): Turn | Stranding {
    const running = runningWatch(record);
    const turn = running === null ? null : this.#whileWatching(plan, running);
    if (turn !== null) return turn;
    this.#looks = 0;
    const offer = this.#howItCame(plan) ?? this.#choose(plan.offers);
    if (offer === undefined) return { stranded: `nothing is offered in ${plan.state}` };
    const change = openChange(record);
    const isMade = offer.steps.some(({ type }) => type === 'applyChange' || type === 'restoreChange');
    return this.#taking(offer, change !== null && isMade ? 5 : 1, record);
  }

  /** Whoever saw how it came says so where that is asked. */
  #howItCame({ offers, state }: Plan): Offer | undefined {
    if (!state.startsWith('reproduce')) return undefined;
    const seen = this.#house.faults.map(seenPatternOf);
    return offers.find(({ steps }) => {
      const last = steps.at(-1) as { type: string; symptom?: Symptom } | undefined;
      return (
        last?.type === 'amendIntake' && seen.some((one) => isDeepStrictEqual(one, last.symptom?.pattern))
      );
    });
  }

  #taking(offer: Offer, waitMin: number, { symptom }: TriageRecord): Turn {
    const commands = withSampleWords(offer).map((each) =>
      each.type === 'recordLook'
        ? { ...each, what: seenIn(this.#house, each.what as ToLookAt, symptom.kind) }
        : each,
    );
    return { waitMin, offer, commands };
  }

  /** What followed in the house from what was done. */
  took(commands: readonly Sent[], before: TriageRecord, after: TriageRecord): void {
    const running = runningWatch(after);
    for (const { type } of commands) {
      const change = deedIn(type === 'applyChange' ? after : before, after);
      if (type === 'applyChange' && change !== null) this.#house.do(change);
      if (type === 'restoreChange' && change !== null) this.#house.undo(change);
      if (type === 'keepChange' && change !== null) this.#house.keep(change);
      if (type === 'finishRemedy') this.#repair(after);
      if (type === 'startWatch' || type === 'recordOccurrence') {
        this.#seenAfterMin = running === null ? null : this.#house.untilSeen(farOff, running.menuDeviceId);
      }
    }
  }

  passed(minutes: number): void {
    this.#house.pass(minutes);
    if (this.#seenAfterMin !== null) this.#seenAfterMin -= minutes;
  }

  #repair({ culprit, remedy, changes }: TriageRecord): void {
    if (culprit === null || remedy === null) return;
    if (remedy.kind === 'permanent') this.#house.repair(culprit.place);
    const shownBy = changes.find(({ id }) => id === culprit.changeId);
    if (remedy.kind === 'workaround' && shownBy !== undefined) this.#house.do(shownBy);
  }

  /** Waits for the fault, or for the end of the watch; null where the watch has nothing left to ask for. */
  #whileWatching(plan: Plan, running: Watch): Turn | Stranding | null {
    if (running.mode === 'look') return this.#lookOnce(plan, running);
    return running.mode === 'trigger'
      ? this.#tryOnce(plan, running)
      : this.#waitOn(plan, running, this.#seenAfterMin ?? farOff);
  }

  #waitOn(plan: Plan, running: Watch, seenAfterMin: number): Turn | Stranding | null {
    const [first] = plan.offers;
    const watching = plan.watchMin ?? first?.watchMin ?? null;
    const asksOn = first !== undefined && isObservation(first);
    const leftMin = watching ?? (asksOn ? lookAgainMin : 0);
    if (leftMin <= 1e-6 && !asksOn) return null;
    if (seenAfterMin <= leftMin) return this.#noting(plan, running, Math.max(0, seenAfterMin));
    this.#looks += 1;
    if (this.#looks > mostLooks) return { stranded: `the watch in ${plan.state} never ends` };
    return { waitMin: leftMin > 1e-6 ? Math.ceil(leftMin) : lookAgainMin, offer: null, commands: [] };
  }

  /** Says what one look shows; what was said already leaves the look to be ended. */
  #lookOnce(plan: Plan, running: Watch): Turn | Stranding | null {
    if (running.occurrences.length > 0) return null;
    if (this.#house.untilSeen(1, running.menuDeviceId) !== null) return this.#noting(plan, running, 1);
    const offer = plan.offers.find(({ steps }) => steps[0]?.type === 'endWatch');
    return offer === undefined
      ? { stranded: `a look at which it was not there can't be ended in ${plan.state}` }
      : { waitMin: 1, offer, commands: withSampleWords(offer) };
  }

  #tryOnce(plan: Plan, running: Watch): Turn | Stranding | null {
    const [first] = plan.offers;
    if (first === undefined || !isObservation(first)) return null;
    if (this.#house.tryFails(running.menuDeviceId)) return this.#noting(plan, running, oneTryMin);
    const offer = plan.offers.find(({ steps }) => steps[0]?.type === 'recordTry');
    return offer === undefined
      ? { stranded: `a try that went well can't be noted in ${plan.state}` }
      : { waitMin: oneTryMin, offer, commands: withSampleWords(offer) };
  }

  #noting(plan: Plan, running: Watch, waitMin: number): Turn | Stranding {
    this.#looks = 0;
    const menu = running.purpose === 'side' ? this.#house.menuAt(running.menuDeviceId ?? '') : null;
    const offer = plan.offers.find(({ steps: [step] }) => {
      const given = (step as { menu?: unknown } | undefined)?.menu ?? null;
      return step?.type === 'recordOccurrence' && (given === null || given === menu);
    });
    if (offer === undefined) return { stranded: `an occurrence can't be noted in ${plan.state}` };
    const commands = withSampleWords(offer).map((each) =>
      menu === null || each.type !== 'recordOccurrence' ? each : { ...each, menu },
    );
    return { waitMin, offer, commands };
  }
}

/** An offer's commands with words that say nothing where a person has to say something. */
export function withSampleWords(offer: Offer): Sent[] {
  const said = Object.fromEntries(offer.toSay.map((path) => [path, sampleWords(path)]));
  return filledIn(offer, said) as Sent[];
}

/** The change that commands were about. */
function deedIn(record: TriageRecord, after: TriageRecord): { kind: string; target: Place } | null {
  const open: ChangeRecord | null = openChange(record);
  return open ?? after.changes.at(-1) ?? null;
}
