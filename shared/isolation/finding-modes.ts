import type { FailureMode } from './failure-modes.ts';

/** The failure modes that a finding of each rule of the prerequisite audit speaks of. */
const modesByRule: Readonly<Record<string, readonly FailureMode[]>> = {
  certification: ['bandwidth'],
  'length-short': ['bandwidth'],
  'length-long': ['bandwidth'],
  'factory-fitted-ends': ['bandwidth', 'contact'],
  'optical-on-source-power': ['linkPower', 'fiveVolt'],
  'twisted-pair-extender': ['bandwidth', 'linkPower', 'contact', 'contentProtection', 'powerOrHeat'],
  couplers: ['coupling', 'bandwidth'],
  direction: ['direction'],
  // Sound that doesn't come back explains no fault of the picture.
  'return-audio': [],
  'end-power': ['linkPower'],
  seating: ['contact'],
  'port-mode': ['portMode'],
  'lower-rate-port': ['portMode'],
  'right-port-label': ['portMode', 'edid'],
  'port-protection': ['contentProtection'],
  processing: ['processing'],
  'edid-management': ['edid'],
  'picture-loss': ['edid', 'processing'],
  'parallel-display': ['edid', 'contentProtection'],
  'firmware-level': ['firmware'],
  'link-budget': ['bandwidth', 'portMode'],
  'five-volt': ['fiveVolt', 'linkPower'],
  'content-protection': ['contentProtection'],
  'protection-topology': ['contentProtection'],
};

/** The failure modes a rule speaks of; null for a rule that isn't known, which is taken to mean all at its place. */
export function modesOfRule(rule: string): readonly FailureMode[] | null {
  return modesByRule[rule] ?? null;
}
