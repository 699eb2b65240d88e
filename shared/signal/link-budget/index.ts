export { type AskedRuns, askedRuns } from './asked.ts';
export type { BudgetAssumptions } from './assumptions.ts';
export type {
  BudgetOptions,
  ChainBudget,
  DisplayBudget,
  LinkBudget,
  WantedOnLink,
  WantedOverall,
} from './budget.ts';
export type { Capacity } from './capacity.ts';
export { chainBudget } from './chain-budget.ts';
export type { EdidOffer } from './edid-offer.ts';
export type { ElementKind, LinkElement } from './elements.ts';
export { worst } from './judged-run.ts';
export { type FaultyRun, type LinkFault, linkFaults } from './link-faults.ts';
export { joinedLosses, type Loss } from './losses.ts';
export type { EdidHand, SeenEdid } from './seen-edid.ts';
export { shownHex } from './shown-edid.ts';
export type { FormatVerdict, LinkVerdict } from './verdict.ts';
export { compareWithout, type DeviceComparison, type FormatWithAndWithout } from './without.ts';
export { lossSentence, overallSentence } from './words.ts';
