import canonicalize from 'canonicalize';
import type { OutcomesApart } from '../../shared/contract/outcome.ts';
import type { AuditFinding } from '../../shared/contract/triage.ts';
import type { CompleteCommand, TriageEvent } from './events.ts';

/** What people act on in an outcome: what they were shown of it is compared with what is decided. */
type Shown = { [Of in OutcomesApart['of']]: Extract<OutcomesApart, { of: Of }>['shown'] };
type ShownOutcome = { [Of in keyof Shown]: { of: Of; shown: Shown[Of] } }[keyof Shown];

/** What is to be shown of what was decided; null where nothing is. */
export function shownOf(event: TriageEvent): ShownOutcome | null {
  switch (event.type) {
    case 'judgeRetest':
      return { of: event.type, shown: { verdict: event.outcome.judgement.verdict } };
    case 'concludeSide':
      return { of: event.type, shown: { side: event.outcome.side } };
    case 'reviewAudit': {
      const { findings } = event.outcome;
      return Array.isArray(findings) ? { of: event.type, shown: { findings } } : null;
    }
    default:
      return null;
  }
}

/** Where a command was sent on another outcome than what is decided: both. Null where they are one, or none was shown. */
export function apartFromShown(command: CompleteCommand, event: TriageEvent): OutcomesApart | null {
  const shown = 'shown' in command ? command.shown : undefined;
  const decided = shownOf(event);
  if (shown === undefined || decided === null || keyOf(shown) === keyOf(decided.shown)) return null;
  return { of: decided.of, shown, decided: decided.shown } as OutcomesApart;
}

/** In what order an audit tells its findings decides nothing. */
function keyOf(shown: Shown[keyof Shown]): string | undefined {
  if (!('findings' in shown)) return canonicalize(shown);
  const one = ({ code, severity, place }: AuditFinding) => canonicalize({ code, severity, place });
  return canonicalize(shown.findings.map(one).sort());
}
