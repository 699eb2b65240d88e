import { placeKey } from '../../../shared/chain/place.ts';
import type { Chain, Device, Place } from '../../../shared/contract/chain.ts';
import { randomFrom } from '../random.ts';
import { type Deed, helpChance, reachOf } from './doings.ts';
import type { Fault, Rhythm } from './faults.ts';

export type HouseFacts = {
  chain: Chain;
  faults: readonly Fault[];
  seed: number;
  /** Chance that whoever looks sees it wrongly: a menu misread, an occurrence missed. */
  observerError?: number;
  /** Chance, a device of which nobody has tried it, that its menu goes with the input it is drawn over. */
  menuFalls?: number;
};

/** Normal use switches something now and then even where nobody makes it; assumed. */
const unaskedTriggersPerHour = 1;
/** Minutes are added up, and so never quite what they should be. */
const aMoment = 1e-6;
/** A quarter of what helps is off by up to this much, either way: no two houses are alike. */
const spread = 0.25;

/**
 * A house with something wrong in it: the truth that a technician in a test is up against. Written from what happens
 * on a job, without any of the product's figures, so that the two can't agree by construction. Minutes pass only by
 * what it is told.
 */
export class House {
  readonly chain: Chain;
  readonly #random: () => number;
  readonly #error: number;
  readonly #menuFalls: Set<string>;
  readonly #ownHalf = new Map<string, boolean>();
  readonly #helped = new Map<string, boolean>();
  #faults: Fault[];
  #deeds: Deed[] = [];
  #sincePowerOnMin = 0;
  #nowMin = 0;
  /** The burst that came last, or is to come: its occurrences are a minute apart. */
  #burst = { fromMin: 0, inBurst: 0 };

  constructor({ chain, faults, seed, observerError = 0.02, menuFalls = 0.25 }: HouseFacts) {
    this.chain = chain;
    this.#random = randomFrom(seed);
    this.#error = observerError;
    this.#faults = [...faults];
    this.#menuFalls = new Set(
      chain.devices
        .filter((device) => this.#random() < this.#fallsChance(device, menuFalls))
        .map(({ id }) => id),
    );
  }

  /** What was tried and written down of a menu is so, but for what whoever tried it saw wrongly. */
  #fallsChance({ menuSurvivesLossOfInput }: Device, untried: number): number {
    if (menuSurvivesLossOfInput === 'unknown') return untried;
    return menuSurvivesLossOfInput === 'no' ? 1 - this.#error : this.#error;
  }

  /** What is still wrong. */
  get faults(): readonly Fault[] {
    return this.#faults;
  }

  /** Whether nothing shows any more, however long one waits: repaired, or kept away by what was done. */
  get isQuiet(): boolean {
    return this.#faults.every((fault) => this.#deeds.some((deed) => this.#helps(deed, fault)));
  }

  do(deed: Deed): void {
    this.#deeds.push(deed);
    if (/power|mains/i.test(deed.kind)) this.#sincePowerOnMin = 0;
  }

  undo(deed: Deed): void {
    this.#deeds = this.#deeds.filter(
      ({ kind, target }) => kind !== deed.kind || placeKey(target) !== placeKey(deed.target),
    );
  }

  /** A deed that stays is part of the house from now on; what it cured is gone. */
  keep(deed: Deed): void {
    this.#faults = this.#faults.filter((fault) => !this.#helps(deed, fault));
    this.undo(deed);
  }

  /** Whoever repairs a place properly repairs what is wrong there, nineteen times in twenty. */
  repair(place: Place): void {
    const parts = place.kind === 'port' ? [`device:${place.deviceId}`, placeKey(place)] : [placeKey(place)];
    this.#faults = this.#faults.filter(({ at }) => !parts.includes(placeKey(at)) || this.#random() < 0.05);
  }

  /** It is switched on again, after a night without. */
  startDay(): void {
    this.#sincePowerOnMin = 0;
  }

  pass(minutes: number): void {
    this.#sincePowerOnMin += minutes;
    this.#nowMin += minutes;
  }

  /**
   * Minutes until the fault shows, of at most so many; null where it does not.
   *
   * @param menuDeviceId whose menu is up meanwhile: a picture that doesn't run through it shows nothing of it
   */
  untilSeen(minutes: number, menuDeviceId: string | null = null): number | null {
    const waits = this.#faultsThatShow(menuDeviceId).map(({ rhythm }) => this.#waitFor(rhythm));
    const first = Math.min(...waits);
    return first <= minutes && this.#random() >= this.#error ? Math.max(0.1, first) : null;
  }

  /** Whether a try of the trigger fails. */
  tryFails(menuDeviceId: string | null = null): boolean {
    return this.#faultsThatShow(menuDeviceId).some(({ rhythm }) => {
      if (rhythm.kind === 'always') return true;
      if (rhythm.kind === 'trigger') return this.#random() < rhythm.chance;
      return this.#waitFor(rhythm) <= 2;
    });
  }

  /** What becomes of a device's menu when the fault shows. */
  menuAt(deviceId: string): 'stayed' | 'vanished' {
    const [fault] = this.#faultsThatShow(deviceId);
    const misread = this.#random() < this.#error;
    const stays = fault === undefined || this.#menuStays(deviceId, fault);
    return stays !== misread ? 'stayed' : 'vanished';
  }

  /** Whether a device's menu goes with its input. */
  menuFalls = (deviceId: string): boolean => this.#menuFalls.has(deviceId);

  /**
   * Whether what a device gets is as it should be, and what it sends.
   *
   * @param atGoodMoment while the fault is not to be seen: then only what is always wrong is wrong
   */
  signalAt(id: string, atGoodMoment: boolean): { receivesRight: boolean; sendsRight: boolean } {
    const showing = this.#faultsThatShow(null).filter(
      ({ rhythm }) => !atGoodMoment || rhythm.kind === 'always',
    );
    const isBefore = ({ at }: Fault) => reachOf(this.chain, at).after.has(id);
    const receivesRight = !showing.some(isBefore);
    return {
      receivesRight,
      sendsRight: receivesRight && !showing.some(({ at }) => placeKey(at) === `device:${id}`),
    };
  }

  #menuStays(deviceId: string, { at }: Fault): boolean {
    const { before, after } = reachOf(this.chain, at);
    if (before.has(deviceId)) return false;
    if (after.has(deviceId)) return !this.#menuFalls.has(deviceId);
    // the fault lies in the device itself, before its menu is drawn or after; or in neither
    const known = this.#ownHalf.get(deviceId) ?? this.#random() < 0.5;
    this.#ownHalf.set(deviceId, known);
    return known;
  }

  #faultsThatShow(menuDeviceId: string | null): Fault[] {
    return this.#faults.filter((fault) => {
      if (this.#deeds.some((deed) => this.#helps(deed, fault))) return false;
      const { onlyWith } = fault;
      if (onlyWith?.kind === 'content' && this.#random() > onlyWith.share) return false;
      if (menuDeviceId === null || fault.at.kind === 'chain') return true;
      const { before, after } = reachOf(this.chain, fault.at);
      return (
        before.has(menuDeviceId) || after.has(menuDeviceId) || placeKey(fault.at) === `device:${menuDeviceId}`
      );
    });
  }

  /** Whether a deed helps is settled once: doing it again does the same again. */
  #helps(deed: Deed, fault: Fault): boolean {
    const key = `${deed.kind} ${placeKey(deed.target)} ${placeKey(fault.at)} ${fault.cause}`;
    const known = this.#helped.get(key);
    if (known !== undefined) return known;
    const chance = helpChance(this.chain, deed, fault) * (1 + spread * (2 * this.#random() - 1));
    const helps = this.#random() < Math.min(0.98, chance);
    this.#helped.set(key, helps);
    return helps;
  }

  #waitFor(rhythm: Rhythm): number {
    const gap = (perHour: number): number => (-Math.log(1 - this.#random()) / perHour) * 60;
    switch (rhythm.kind) {
      case 'always':
        return 0.1;
      case 'random':
        return gap(rhythm.perHour);
      case 'trigger':
        return rhythm.chance <= 0 ? Number.POSITIVE_INFINITY : gap(unaskedTriggersPerHour * rhythm.chance);
      case 'warm':
        return Math.max(0, rhythm.afterMin - this.#sincePowerOnMin) + gap(rhythm.perHour);
      default: {
        const sinceMin = this.#nowMin + aMoment - this.#burst.fromMin;
        if (sinceMin >= 0 && sinceMin + 1 < this.#burst.inBurst) return 1;
        const fromMin = this.#nowMin + gap(rhythm.perHour);
        this.#burst = { fromMin, inBurst: rhythm.inBurst };
        return fromMin - this.#nowMin;
      }
    }
  }
}
