import { describe, expect, it } from 'vitest';
import { downstreamOf, findLink } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { PlannedTestView, PlanReply } from '../../../shared/contract/plan.ts';
import { message } from '../../../shared/message/index.ts';
import {
  filledIn,
  knownOfChain,
  type PlanRequest,
  planByPhone,
  planTicket,
} from '../../../state-machines/index.ts';
import { display, homeCinema, processor, rowOf, source } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link } from './triage-events.ts';

const chain = homeCinema();
const settings = organisationSettings.parse({});
const intake = {
  affectedSources: ['player'],
  affectedDisplays: ['projector'],
  content: 'notKnown' as const,
  workedBefore: true,
};

function requestOf(ticket: TriageCase, more: Partial<PlanRequest['known']> = {}): PlanRequest {
  const known = {
    ...knownOfChain(chain, ticket.record.symptom, settings, []),
    intake,
    facts: [],
    today: '2026-11-02',
    ...more,
  };
  return { known, chainVersion: 3, here: { kit: null, people: 2, refused: [] }, now: ticket.now };
}
/** The same over a chain of so many devices in a row, of which nothing but its description is known. */
function planOfRow(devices: number): PlanReply {
  const between = Array.from({ length: devices - 2 }, (_, at) => processor(`p${at}`));
  const long = rowOf([source('player'), ...between, display('projector')]);
  const ticket = new TriageCase({ chain: long });
  const request = requestOf(ticket, knownOfChain(long, ticket.record.symptom, settings, []));
  return planTicket(ticket.snapshot, request);
}
const planOf = (ticket: TriageCase): PlanReply => planTicket(ticket.snapshot, requestOf(ticket));

const typesOf = ({ offers }: PlanReply): string[][] =>
  offers.map(({ steps }) => steps.map(({ type }) => type));

/** Plays the plan against a cable that has a bad contact: putting another one in its place takes the fault away. */
function follow(ticket: TriageCase, linkId: string): PlanReply {
  const sink = findLink(chain, linkId)?.to.deviceId ?? '';
  for (let step = 0; step < 25; step += 1) {
    const plan = planOf(ticket);
    const [offer] = plan.offers;
    const type = offer?.steps[0]?.type;
    if (offer === undefined || type === 'nameCulprit' || type === 'escalate') return plan;
    const test = offer.test;
    ticket.send(...filledIn(offer, { reason: 'Another menu tells more' }).slice(0, -1));
    if (test === null) ticket.watch(30, 1);
    else if (test.kind === 'menu' && test.target.kind === 'device') {
      const { deviceId } = test.target;
      ticket.menuWatch(deviceId, downstreamOf(chain, deviceId).has(sink) ? 'vanished' : 'stayed');
      ticket.send({ type: 'concludeSide', deviceId });
    } else tryChange(ticket, test, linkId);
  }
  throw new Error('no end');
}

function tryChange(ticket: TriageCase, test: PlannedTestView, linkId: string): void {
  const atCable = JSON.stringify(test.target) === JSON.stringify(link(linkId));
  const without = test.kind === 'sourceIntoProcessor' && linkId !== 'L4';
  const cured = without || (atCable && ['reseat', 'replaceCable', 'temporaryCable'].includes(test.kind));
  ticket.declare(test.kind as 'reseat', test.target).send({ type: 'applyChange' });
  ticket.watch(cured ? 200 : 20, cured ? 0 : 2).send({ type: 'judgeRetest' });
  ticket.send({ type: 'restoreChange' });
}

describe('a ticket that follows its plan', () => {
  it.each(['L1', 'L3', 'L4'])('ends at the cable that is bad: %s', (linkId) => {
    const ticket = new TriageCase({ chain });
    ticket.reproduced();
    const plan = follow(ticket, linkId);
    expect(plan.suspects[0]?.place).toEqual(link(linkId));
    expect(typesOf(plan)[0]).toEqual(['nameCulprit']);
  });
});

describe('what a plan says', () => {
  it('asks for the menu of a device on the way before any change, whatever the ranking says', () => {
    const ticket = new TriageCase({ chain }).reproduced();
    const plan = planOf(ticket);
    expect(plan.next?.kind).toBe('menu');
    for (const { kind } of plan.others) expect(kind).toBe('menu');
  });

  it('follows what logs say', () => {
    const ticket = new TriageCase({ chain }).reproduced();
    const share = (more: Partial<PlanRequest['known']>) =>
      planTicket(ticket.snapshot, requestOf(ticket, more)).suspects.find(
        ({ component }) => component === 'device:processor',
      )?.probability ?? 0;
    const facts = [
      { kind: 'fact', fact: 'restarted', place: { kind: 'device', deviceId: 'processor' } },
    ] as const;
    expect(share({ facts })).toBeGreaterThan(2 * share({}));
  });

  it('names no culprit that no change has shown', () => {
    const ticket = new TriageCase({ chain }).reproduced();
    for (const deviceId of ['player', 'receiver', 'processor']) {
      ticket.menuWatch(deviceId, 'vanished').send({ type: 'concludeSide', deviceId });
    }
    ticket.menuWatch('projector', 'stayed').send({ type: 'concludeSide', deviceId: 'projector' });
    ticket.send({ type: 'beginSubstitution' });
    const plan = planOf(ticket);
    expect(typesOf(plan)[0]).toEqual(['declareChange']);
    expect(typesOf(plan).flat()).not.toContain('nameCulprit');
    expect(plan.stop).toBeNull();
  });

  it('says what is left to watch while a change is in place, and no other test', () => {
    const ticket = new TriageCase({ chain }).substituting('processor', 'vanished');
    ticket.declare('temporaryCable', link('L4')).send({ type: 'applyChange' }, { type: 'startWatch' });
    const needed = planOf(ticket).watchMin ?? 0;
    ticket.wait(10);
    const plan = planOf(ticket);
    expect(plan.watchMin).toBeCloseTo(needed - 10, 6);
    expect(plan.next).toBeNull();
    ticket.send({ type: 'recordOccurrence' });
    expect(typesOf(planOf(ticket))[0]).toEqual(['endWatch', 'judgeRetest']);
  });

  it('counts findings that say the same of one cable once', () => {
    const ticket = new TriageCase({ chain }).reproduced();
    const finding = {
      rule: 'certification',
      severity: 'mustFix' as const,
      place: link('L4'),
      placeName: message('thePlace', { place: namedPlace(chain, link('L4')) }),
      text: message('lookForCertificationLabel'),
      whatToDo: message('lookForCertificationLabel'),
      source: message('commonPractice'),
      cautions: [],
    };
    const share = (findings: PlanRequest['known']['findings']) =>
      planTicket(ticket.snapshot, requestOf(ticket, { findings })).suspects.find(
        ({ component }) => component === 'link:L4',
      )?.probability;
    const once = share([finding]);
    expect(share([finding, { ...finding, rule: 'length-long' }])).toBe(once);
    expect(once).toBeGreaterThan(share([]) ?? 1);
  });

  it('asks nothing of a client on the phone that takes kit or a ladder', () => {
    const ticket = new TriageCase({ chain });
    const plan = planByPhone(ticket.snapshot, requestOf(ticket), { reachableDevices: [] });
    for (const test of plan.next === null ? [] : [plan.next, ...plan.others]) {
      expect(test.kit).toEqual([]);
      expect(['temporaryCable', 'replaceCable', 'substituteDisplay', 'moveProcessorToDisplay']).not.toContain(
        test.kind,
      );
    }
    expect(plan.van.length).toBeGreaterThan(0);
  });
});

describe('the plan of a very large chain', () => {
  it('says that it is the best of what it had the time to weigh, and gives the same each time', () => {
    const plan = planOfRow(200);
    expect(plan.cutShort?.left).toBeGreaterThan(0);
    expect(JSON.stringify(plan.sentence)).toContain('planCutShort');
    expect(plan.next).not.toBeNull();
    expect(planOfRow(200)).toEqual(plan);
  });

  it('says nothing of the kind where everything was weighed', () => {
    expect(planOfRow(6).cutShort).toBeNull();
    expect(JSON.stringify(planOfRow(6).sentence)).not.toContain('planCutShort');
  });
});
