import type { Chain, Place } from '../../shared/contract/chain.ts';
import type { Fault, Rhythm, Trigger } from '../support/house/faults.ts';

/** A case as the client tells it, and what is true. */
export type PlayedCase = {
  name: string;
  chain: Chain;
  symptom: string;
  faults: Fault[];
  /** What the client tells beside the pattern, which follows from the first fault. */
  intake?: Record<string, unknown>;
  /** The client doesn't know how it comes. */
  patternUntold?: boolean;
  seed: number;
};

export const link = (linkId: string): Place => ({ kind: 'link', linkId });
export const device = (deviceId: string): Place => ({ kind: 'device', deviceId });
export const nowhere: Place = { kind: 'chain' };

export const always: Rhythm = { kind: 'always' };
export const onTrigger = (trigger: Trigger, chance = 0.7): Rhythm => ({ kind: 'trigger', trigger, chance });
export const random = (perHour: number): Rhythm => ({ kind: 'random', perHour });
export const bursts = (perHour: number, inBurst: number): Rhythm => ({ kind: 'bursts', perHour, inBurst });
export const warm = (afterMin: number, perHour: number): Rhythm => ({ kind: 'warm', afterMin, perHour });

export const fault = (
  cause: Fault['cause'],
  at: Place,
  rhythm: Rhythm,
  onlyWith: Fault['onlyWith'] = null,
): Fault => ({ cause, at, rhythm, onlyWith });
