import type { Pattern, Symptom } from '../../../../shared/contract/triage.ts';

/** The symptom as version 1 held it: how the fault comes was no part of it, and a wrong colour not told from lost HDR. */
export type SymptomThen = Omit<Symptom, 'pattern' | 'onlyWith' | 'kind'> & {
  kind: Exclude<Symptom['kind'], 'noHdr' | 'wrongColour'> | 'noHdrOrWrongColour';
};
/** When the fault shows, as a call was asked for it in version 1; the intake held it, the record did not. */
export type MomentThen = 'anyTime' | 'atSwitching' | 'whenWarm' | 'notKnown';

const patterns: Record<MomentThen, Pattern> = {
  anyTime: { kind: 'random', rarely: false },
  // It said "when something is switched or started", and not what.
  atSwitching: { kind: 'trigger', trigger: 'other' },
  whenWarm: { kind: 'warm', afterMin: null },
  notKnown: { kind: 'notKnown' },
};

export const symptomAsToday = (then: SymptomThen, moment: MomentThen = 'notKnown'): Symptom => ({
  ...then,
  kind: then.kind === 'noHdrOrWrongColour' ? 'noHdr' : then.kind,
  pattern: patterns[moment],
  onlyWith: null,
});
