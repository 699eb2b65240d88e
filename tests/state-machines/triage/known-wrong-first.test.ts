import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../shared/contract/chain.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import { knownOfChain, planTicket } from '../../../state-machines/index.ts';
import { homeCinema, tmds9, withLink, withPort } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link, port } from './triage-events.ts';

const settings = organisationSettings.parse({});
const intake = {
  affectedSources: ['player'],
  affectedDisplays: ['projector'],
  content: 'notKnown' as const,
  workedBefore: true,
};

function planOf(ticket: TriageCase, chain: Chain) {
  const known = {
    ...knownOfChain(chain, ticket.record.symptom, settings, []),
    intake,
    facts: [],
    today: '2026-11-02',
  };
  const here = { kit: null, people: 2, refused: [] } as const;
  return planTicket(ticket.snapshot, { known, chainVersion: 3, here, now: ticket.now });
}

/** The fault lies behind the processor, and nothing was changed yet. */
const behindIt = (chain: Chain) => new TriageCase({ chain }).substituting('processor', 'vanished');
const beforeIt = (chain: Chain) => new TriageCase({ chain }).substituting('processor', 'stayed');
const firstStep = ({ offers: [first] }: ReturnType<typeof planOf>) => first?.steps[0];
const codesOf = ({ sentence }: ReturnType<typeof planOf>): unknown => JSON.stringify(sentence);

describe('what the audit knows to be wrong', () => {
  it('comes before any swap, as the change that mends it, at its place: a socket in the wrong mode', () => {
    const chain = withPort(homeCinema(), 'processor', 'in1', { setMode: tmds9 });
    const plan = planOf(beforeIt(chain), chain);
    expect(firstStep(plan)).toMatchObject({
      type: 'declareChange',
      kind: 'raisePortMode',
      target: port('processor', 'in1'),
    });
    expect(plan.offers[0]?.why).toMatchObject({
      code: 'putRightFirst',
      values: { finding: { code: 'portSetBelowNeed' } },
    });
    expect(plan.offers.length).toBeGreaterThan(2);
  });

  it('so does a cable of too low a category, and a plug that is loose', () => {
    const low = withLink(homeCinema(), 'L3', { category: 'highSpeed', route: 'free' });
    expect(firstStep(planOf(beforeIt(low), low))).toMatchObject({ kind: 'replaceCable', target: link('L3') });
    const loose = withLink(homeCinema(), 'L3', {
      sinkEnd: { needsPower: false, powered: 'unknown', seated: 'no' },
    });
    expect(firstStep(planOf(beforeIt(loose), loose))).toMatchObject({ kind: 'reseat', target: link('L3') });
  });

  it('is said with its place where no change mends it: a cable laid the wrong way round', () => {
    const chain = withLink(homeCinema(), 'L4', { direction: 'reversed' });
    const plan = planOf(behindIt(chain), chain);
    expect(plan.sentence).toMatchObject({
      code: 'sentences',
      values: {
        sentences: [{ code: 'worthKnowingFirst', values: { finding: { code: 'cableReversed' } } }, {}],
      },
    });
    expect(plan.offers[0]?.test).not.toBeNull();
  });

  it('is said nothing of on the other side, and no more once something was changed', () => {
    const chain = withPort(homeCinema(), 'processor', 'in1', { setMode: tmds9 });
    expect(firstStep(planOf(behindIt(chain), chain))).not.toMatchObject({ kind: 'raisePortMode' });
    const ticket = beforeIt(chain).tried('reseat', link('L3'), 'persists').send({ type: 'keepChange' });
    expect(codesOf(planOf(ticket, chain))).not.toContain('putRightFirst');
  });
});
