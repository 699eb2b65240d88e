import type { workingStates } from '../../../shared/contract/triage.ts';
import { TriageCase } from './triage-case.ts';
import { device } from './triage-events.ts';

/** A ticket in each state that it is worked on in. */
export const working: Record<(typeof workingStates)[number], () => TriageCase> = {
  baseline: () => new TriageCase(),
  reproduce: () => new TriageCase().baseline(),
  locateSide: () => new TriageCase().reproduced(),
  'substitute.ready': () => new TriageCase().substituting(),
  'substitute.declared': () => new TriageCase().substituting().declare('bypassDevice', device('receiver')),
  'substitute.applied': () => working['substitute.declared']().send({ type: 'applyChange' }),
  'substitute.judged': () =>
    new TriageCase().substituting().tried('bypassDevice', device('receiver'), 'cleared'),
  culpritFound: () => new TriageCase().culpritNamed(),
  remedy: () =>
    new TriageCase()
      .culpritNamed()
      .send({ type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'A new cable' } }),
  verify: () => new TriageCase().repaired(),
};
