import type { FailureMode } from './failure-modes.ts';

/** Words in the names of audit rules, and the failure modes that a finding of such a rule speaks of. */
const modesByWord: readonly (readonly [RegExp, readonly FailureMode[]])[] = [
  [/certif|length|long|short|budget|bandwidth|capacity|headroom/, ['bandwidth']],
  [/seat|contact|factory|ends/, ['contact']],
  [/direction|reversed/, ['direction']],
  [/power|five|5v/, ['linkPower', 'fiveVolt']],
  [/port-?mode|lower-?rate|right-?port|set-?mode/i, ['portMode']],
  [/edid/, ['edid']],
  [/process|scal/, ['processing']],
  [/protect/, ['contentProtection']],
  [/firmware/, ['firmware']],
  [/parallel|branch|second-?display/, ['edid', 'contentProtection']],
];

/** The failure modes an audit rule speaks of; null for a rule that isn't known, which is taken to mean all of them. */
export function modesOfRule(rule: string): readonly FailureMode[] | null {
  const name = rule.toLowerCase();
  const found = modesByWord.filter(([word]) => word.test(name)).flatMap(([, modes]) => modes);
  return found.length === 0 ? null : found;
}
