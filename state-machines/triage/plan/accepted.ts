import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { Offer } from '../../../shared/contract/plan.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import { completeCommand } from '../complete-command.ts';
import { whyNotInOrder } from '../decide.ts';
import type { CompleteCommand } from '../events.ts';
import type { TriageSnapshot } from '../evolve.ts';
import { filledIn, standInFor } from './fill-in.ts';
import type { Known } from './known.ts';

type Sending = {
  known: Pick<Known, 'chain' | 'findings'>;
  ownChanges: readonly OwnChange[];
  /** UTC, ISO 8601. */
  now: string;
  role: MemberRole;
};

/** Ids that no record has, for what the commands of an offer make. */
function newIds(): () => string {
  let last = 0;
  return () => {
    last += 1;
    return `00000000-0000-4000-8000-${String(last).padStart(12, '0')}`;
  };
}

/** Whether an offer's commands would be accepted if they were sent now, in order, whatever is said with them. Pure. */
export function wouldAccept(snapshot: TriageSnapshot, offer: Offer, sending: Sending): boolean {
  const { known, ownChanges, now, role } = sending;
  const said = Object.fromEntries(offer.toSay.map((path) => [path, standInFor(path)]));
  const sender = { at: now, by: snapshot.context.openedBy, role, newId: newIds() };
  const facts = { ...known, chainVersion: 0, firmwareLevels: [], figures: null, ownChanges };
  const complete = (command: TicketCommand): CompleteCommand => completeCommand(command, sender, facts);
  return whyNotInOrder(snapshot, filledIn(offer, said).map(complete)) === null;
}

/** Of the offers, those that would be accepted, each once. */
export function acceptedOf(snapshot: TriageSnapshot, offers: readonly Offer[], sending: Sending): Offer[] {
  const distinct = new Map(offers.toReversed().map((offer) => [offer.key, offer]));
  return offers.filter((offer) => distinct.get(offer.key) === offer && wouldAccept(snapshot, offer, sending));
}
