import { describe, expect, it } from 'vitest';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { PlanReply } from '../../../shared/contract/plan.ts';
import { filledIn, knownOfChain, planTicket } from '../../../state-machines/index.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';

const chain = homeCinema();
const settings = organisationSettings.parse({});
const intake = {
  affectedSources: [],
  affectedDisplays: [],
  content: 'notKnown',
  workedBefore: null,
} as const;

function planOf(ticket: TriageCase): PlanReply {
  const known = {
    ...knownOfChain(chain, ticket.record.symptom, settings, []),
    intake: { ...intake, affectedSources: [], affectedDisplays: [] },
    facts: [],
    today: '2026-11-02',
  };
  const here = { kit: null, people: 2, refused: [] } as const;
  return planTicket(ticket.snapshot, { known, chainVersion: 3, here, now: ticket.now });
}

const takesBack = ({ offers: [first] }: PlanReply): boolean =>
  first?.steps.some(({ type }) => type === 'withdrawSide') === true;

/** Does what the plan offers, and the fault comes all the same, until a side is to be taken back or no change is left. */
function inVain(ticket: TriageCase): PlanReply {
  for (let step = 0; step < 12; step += 1) {
    const plan = planOf(ticket);
    const [first] = plan.offers;
    if (first?.steps[0]?.type === 'recordLook') {
      ticket.send(...filledIn(first, { 'what.answer': 'cannotSay' }));
      continue;
    }
    if (first === undefined || first.test === null || first.test.kind === 'menu') return plan;
    ticket.tried(first.test.kind as 'reseat', first.test.target, 'persists');
    const [after] = planOf(ticket).offers;
    if (after !== undefined) ticket.send(...filledIn(after, { reason: 'It has to be as it was' }));
  }
  return planOf(ticket);
}

/** The menus of the receiver and of the television that hangs on it both went: only the television is left by that. */
const narrowedToTelevision = (): TriageCase =>
  new TriageCase({ chain })
    .reproduced()
    .side('receiver', 'vanished')
    .side('television', 'vanished')
    .send({ type: 'beginSubstitution' });

describe('a side that rules out where the fault is likelier to be', () => {
  it('is to be taken back once nothing is left to test on it, and the plan goes on elsewhere', () => {
    const ticket = narrowedToTelevision();
    const plan = inVain(ticket);
    expect(takesBack(plan)).toBe(true);
    const [first] = plan.offers;
    if (first === undefined) throw new Error('Nothing is offered.');
    expect(first.steps).toContainEqual(
      expect.objectContaining({ type: 'withdrawSide', deviceId: 'television' }),
    );
    ticket.send(...filledIn(first, { reason: 'The projector shows it too' }));
    const next = planOf(ticket);
    expect(next.state).toBe('substitute.ready');
    expect(next.next).not.toBeNull();
  });

  it('is taken back once in a round, and not where it leaves what is likeliest', () => {
    const ticket = narrowedToTelevision();
    expect(takesBack(planOf(ticket))).toBe(false);
    const [first] = inVain(ticket).offers;
    if (first === undefined) throw new Error('Nothing is offered.');
    ticket
      .send(...filledIn(first, { reason: 'The projector shows it too' }))
      .send({ type: 'locateSideAgain', reason: 'Seen once more' })
      .side('television', 'vanished')
      .send({ type: 'beginSubstitution' });
    const again = inVain(ticket).offers.flatMap(({ steps }) => steps);
    expect(again).not.toContainEqual(
      expect.objectContaining({ type: 'withdrawSide', deviceId: 'television' }),
    );
  });
});
