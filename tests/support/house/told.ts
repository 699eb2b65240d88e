import type { Symptom } from '../../../shared/contract/triage.ts';
import type { Fault, Rhythm } from './faults.ts';

/** Rarer than this an hour, a client says "rarely", and a fault need not show on a visit. */
export const rarePerHour = 1 / 24;

/** How a client who knows tells that a fault comes. */
export function toldOf({ rhythm, onlyWith }: Fault): Pick<Symptom, 'perHour' | 'pattern' | 'onlyWith'> {
  return { perHour: perHourOf(rhythm), pattern: patternOf(rhythm), onlyWith: toldWith(onlyWith) };
}

/** Only where there is a rate. */
function perHourOf(rhythm: Rhythm): number | null {
  if (rhythm.kind === 'random' || rhythm.kind === 'warm') return rhythm.perHour;
  return rhythm.kind === 'bursts' ? rhythm.perHour * rhythm.inBurst : null;
}

/** How it looks to whoever sees it come while trying things: always there, by what was tried, or by itself. */
export function seenPatternOf({ rhythm }: Fault): Symptom['pattern'] {
  return rhythm.kind === 'always' || rhythm.kind === 'trigger'
    ? patternOf(rhythm)
    : { kind: 'random', rarely: false };
}

function patternOf(rhythm: Rhythm): Symptom['pattern'] {
  switch (rhythm.kind) {
    case 'always':
    case 'bursts':
      return { kind: rhythm.kind };
    case 'trigger':
      return { kind: 'trigger', trigger: rhythm.trigger };
    case 'random':
      return { kind: 'random', rarely: rhythm.perHour <= rarePerHour };
    case 'warm':
      return { kind: 'warm', afterMin: Math.round(rhythm.afterMin) };
  }
}

function toldWith(onlyWith: Fault['onlyWith']): Symptom['onlyWith'] {
  if (onlyWith === null) return null;
  return onlyWith.kind === 'source'
    ? { kind: 'source', what: 'This one', deviceId: onlyWith.deviceId }
    : { kind: 'title', what: 'One kind of title', deviceId: null };
}
