import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../shared/contract/chain.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { PlanReply } from '../../../shared/contract/plan.ts';
import { mostWork, WorkMeter } from '../../../shared/isolation/index.ts';
import { decide, knownOfChain, planTicket } from '../../../state-machines/index.ts';
import { display, processor, rowOf, source } from '../../chain/build-chain.ts';
import { largestChain } from '../../support/largest-chain.ts';
import { withSampleWords } from '../../support/technician.ts';
import { TriageCase } from './triage-case.ts';
import { completeOf, type Sent, uuid } from './triage-events.ts';

const settings = organisationSettings.parse({});
const row = (devices: number): Chain =>
  rowOf([
    source('player'),
    ...Array.from({ length: devices - 2 }, (_, at) => processor(`p${at}`)),
    display('projector'),
  ]);

type Planned = { ticket: TriageCase; chain: Chain; plan: PlanReply; units: number };
function planned(chain: Chain, ticket: TriageCase, ownChanges: readonly OwnChange[] = []): Planned {
  const meter = new WorkMeter();
  const plan = planTicket(ticket.snapshot, {
    known: {
      ...knownOfChain(chain, ticket.record.symptom, settings, []),
      intake: { affectedSources: [], affectedDisplays: [], content: 'notKnown', workedBefore: null },
      facts: [],
      today: ticket.now.slice(0, 10),
    },
    chainVersion: 1,
    here: { kit: null, people: 2, refused: [] },
    ownChanges,
    now: ticket.now,
    meter,
  });
  return { ticket, chain, plan, units: meter.units };
}

const ofSides = (chain: Chain, ownChanges: readonly OwnChange[] = []): Planned[] => {
  const reproduced = new TriageCase({ chain }).reproduced();
  const withoutSide = new TriageCase({ chain })
    .reproduced()
    .send({ type: 'goOnWithoutSide', reason: 'No menu tells anything' });
  return [planned(chain, reproduced, ownChanges), planned(chain, withoutSide, ownChanges)];
};

/** Why the machine would not take the first offer as it stands; null where it does. */
function refusal({ ticket, chain, plan }: Planned, ownChanges: readonly OwnChange[] = []): string | null {
  let { snapshot } = ticket;
  let ids = 5000;
  const [first] = plan.offers;
  if (first === undefined) return 'nothing is offered';
  for (const command of withSampleWords(first)) {
    const stamp = {
      at: ticket.now,
      newId: () => uuid(ids++),
      role: 'technician' as const,
      chain,
      ownChanges,
    };
    const decision = decide(snapshot, completeOf(command as Sent, stamp));
    if (!decision.accepted) return decision.refusal.said.code;
    snapshot = decision.snapshot;
  }
  return null;
}

const ownChanges: OwnChange[] = Array.from({ length: 30 }, (_, at) => ({
  id: uuid(900 + at),
  name: `Our step ${at}`,
  actsOn: 'port',
  mayStay: false,
  setupMin: 5,
  restoreMin: 5,
  kit: '',
  caution: '',
  keepsAway: null,
  byClient: null,
  reachesNeighbours: false,
}));

describe.each([
  { name: 'a ladder of 200 devices and 392 cables', chain: largestChain(), own: [] },
  { name: '200 devices in a row', chain: row(200), own: [] },
  { name: 'a ladder with thirty kinds of our own', chain: largestChain(), own: ownChanges },
])('the plan of the largest chain: $name', ({ chain, own }) => {
  const plans = ofSides(chain, own);

  it('is an offer that the machine takes, with that not all was weighed', () => {
    for (const each of plans) {
      expect(each.plan.cutShort?.left).toBeGreaterThan(0);
      expect(JSON.stringify(each.plan.sentence)).toContain('planCutShort');
      expect(each.plan.offers.length).toBeGreaterThan(0);
      expect(refusal(each, own)).toBeNull();
    }
  });

  it('takes no more than its budget of work, and the same each time', () => {
    for (const { units } of plans) {
      expect(units).toBeGreaterThan(0);
      expect(units).toBeLessThanOrEqual(mostWork);
    }
    expect(ofSides(chain, own).map(({ plan, units }) => ({ plan, units }))).toEqual(
      plans.map(({ plan, units }) => ({ plan, units })),
    );
  });
});

it('weighs everything at forty devices', () => {
  const all = [...ofSides(row(40)), ...ofSides(largestChain(13))];
  expect(all.map(({ plan }) => plan.cutShort)).toEqual(all.map(() => null));
});
