import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../shared/contract/chain.ts';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { Offer, PlanReply } from '../../../shared/contract/plan.ts';
import {
  decide,
  filledIn,
  knownOfChain,
  type PlanRequest,
  planTicket,
} from '../../../state-machines/index.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, port, type Sent, uuid, waiveAll } from './triage-events.ts';

const settings = organisationSettings.parse({});
type Intake = PlanRequest['known']['intake'];
const intake: Intake = {
  affectedSources: ['player'],
  affectedDisplays: ['projector'],
  content: 'notKnown',
  workedBefore: true,
};

function planOf(ticket: TriageCase, more: { chain?: Chain; intake?: Partial<Intake> } = {}): PlanReply {
  const chain = more.chain ?? homeCinema();
  const known = knownOfChain(chain, ticket.record.symptom, settings, []);
  return planTicket(ticket.snapshot, {
    known: { ...known, intake: { ...intake, ...more.intake }, facts: [], today: '2026-11-02' },
    chainVersion: 3,
    here: { kit: null, people: 2, refused: [] },
    now: ticket.now,
  });
}

const wordsFor = (path: string): unknown => {
  if (path === 'until') return '2027-01-08T10:00:00.000Z';
  return path === 'answers' ? [{ kind: 'notKnown' }] : `Said of ${path}`;
};
const commandsOf = (offer: Offer): Sent[] =>
  filledIn(offer, Object.fromEntries(offer.toSay.map((path) => [path, wordsFor(path)]))) as Sent[];
/** Why one of an offer's commands would be refused now; null where all are accepted. */
function refusalOf(ticket: TriageCase, offer: Offer): string | null {
  let { snapshot } = ticket;
  for (const command of commandsOf(offer)) {
    const decision = decide(snapshot, ticket.complete(command));
    if (!decision.accepted) return `${offer.key}: ${decision.refusal.said.code}`;
    snapshot = decision.snapshot;
  }
  return null;
}
/** What the plan offers, each of which has to be accepted. */
function offersOf(ticket: TriageCase, more: Parameters<typeof planOf>[1] = {}): string[] {
  const { offers } = planOf(ticket, more);
  for (const offer of offers) expect(refusalOf(ticket, offer)).toBeNull();
  return offers.map(({ key }) => key);
}
const take = (ticket: TriageCase, index = 0): TriageCase => {
  const offer = planOf(ticket).offers[index];
  if (offer === undefined) throw new Error('nothing is offered');
  return ticket.send(...commandsOf(offer));
};

describe('after a change was judged, the plan', () => {
  it('keeps an update of firmware that did not clear the fault, since it can’t be undone, and goes on', () => {
    const ticket = new TriageCase();
    ticket.substituting();
    ticket.record.audit?.firmwareBelowLevel.push('receiver');
    ticket.tried('updateFirmware', device('receiver'), 'persists');
    expect(offersOf(ticket)).toEqual(['keepChange']);
    take(ticket);
    expect(ticket.state).toBe('substitute.ready');
    expect(planOf(ticket).next).not.toBeNull();
  });

  it('keeps a port mode that was wrong, whatever the retest says', () => {
    const chain = homeCinema();
    for (const each of chain.devices.find(({ id }) => id === 'receiver')?.ports ?? [])
      each.setMode = { kind: 'tmds', maxCharacterRateMHz: 300 };
    const ticket = new TriageCase({ chain }).substituting('processor', 'stayed');
    ticket.tried('raisePortMode', port('receiver', 'out1'), 'persists');
    expect(offersOf(ticket)).toEqual(['keepChange', 'restoreChange']);
  });

  it('puts back what changed nothing and can go back', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'persists');
    expect(offersOf(ticket)).toEqual(['restoreChange']);
  });

  it('names the culprit once what cleared the fault is kept, and offers no other change', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    ticket.send({ type: 'keepChange' });
    const offers = offersOf(ticket);
    expect(offers[0]).toBe(`nameCulprit link:L3 ${ticket.lastChange.id}`);
    expect(offers.some((key) => key.includes('declareChange'))).toBe(false);
    expect(planOf(ticket).sentence.code).toBe('cureKeptNameIt');
  });

  it('does not ask for the same change again, be it withdrawn, kept or quiet', () => {
    const ticket = new TriageCase().substituting();
    ticket.declare('reseat', link('L3')).send({ type: 'withdrawChange', reason: 'Behind a screwed panel' });
    ticket.tried('reseat', link('L1'), 'persists').send({ type: 'keepChange' });
    const proposed = offersOf(ticket).join();
    expect(proposed).toContain('declareChange');
    expect(proposed).not.toContain('declareChange reseat link:L3');
    expect(proposed).not.toContain('declareChange reseat link:L1');
  });

  it('names what cleared the fault, once it had the time to return and did not', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    ticket.send({ type: 'restoreChange' });
    expect(offersOf(ticket)[0]).toBe('startWatch time');
    ticket.watch(40, 0);
    expect(planOf(ticket).sentence.code).toBe('changeDidNotReturn');
    expect(offersOf(ticket)[0]).toMatch(/^nameCulprit link:L3/);
  });

  it('hands the case on after six changes in vain', () => {
    const ticket = new TriageCase().substituting();
    const tests = ['L1', 'L2', 'L3'].flatMap((id) => [
      ['reseat', id] as const,
      ['replaceCable', id] as const,
    ]);
    for (const [kind, id] of tests) {
      ticket.tried(kind, link(id), 'persists').send({ type: 'restoreChange' });
    }
    expect(planOf(ticket).sentence.code).toBe('manyInVain');
    expect(offersOf(ticket)[0]).toBe('escalate');
  });
});

describe('while the side is looked for, the plan', () => {
  it('goes to another menu, or takes a watch back, where one stayed and vanished', () => {
    const ticket = new TriageCase().reproduced();
    ticket.menuWatch('processor', 'stayed', 'vanished');
    const { sentence } = planOf(ticket);
    expect(JSON.stringify(sentence.values)).toContain('menuContradicts');
    const offers = offersOf(ticket);
    expect(offers[0]).toMatch(/^startWatch (?!processor)/);
    expect(offers.join()).not.toContain('concludeSide');
    expect(offers).toContain(`voidWatch ${ticket.lastWatch.id}`);
    expect(ticket.allowed()).not.toContain('concludeSide');
  });

  it('goes on without a side, or hands over, where every menu contradicts itself', () => {
    const ticket = new TriageCase().reproduced();
    for (const id of ['player', 'receiver', 'processor', 'projector'])
      ticket.menuWatch(id, 'stayed', 'vanished');
    const offers = offersOf(ticket);
    expect(offers.join()).not.toContain('startWatch');
    expect(offers[0]).toBe('goOnWithoutSide');
    expect(offers).toContain('escalate');
  });

  it('asks for no menu of a source that does not show the fault', () => {
    const ticket = new TriageCase().reproduced();
    const keys = offersOf(ticket, { intake: { affectedSources: ['player'] } });
    expect(keys.filter((key) => key.startsWith('startWatch')).join()).not.toContain('streamer');
  });

  it('does not put the same menu up again after the fault had the time to come with it', () => {
    const ticket = new TriageCase().reproduced();
    const [first = ''] = offersOf(ticket);
    take(ticket).wait(60);
    expect(offersOf(ticket)[0]).toBe('endWatch');
    take(ticket);
    expect(offersOf(ticket)).not.toContain(first);
  });
});

describe('where the fault does not show, the plan', () => {
  const quiet = () => new TriageCase().baseline().watch(10_000, 0);

  it('settles on no fault found, or hands over, and does not watch the same once more', () => {
    const offers = offersOf(quiet());
    expect(offers).toContain('chooseRemedy noFaultFound');
    expect(offers).toContain('escalate');
    expect(offers).not.toContain('startWatch time');
  });

  it('repairs nothing, and closes without another watch, after no fault found', () => {
    const ticket = quiet().send({
      type: 'chooseRemedy',
      remedy: { kind: 'noFaultFound', what: 'Quiet for a week' },
    });
    expect(planOf(ticket).sentence.code).toBe('leaveAsItIs');
    take(ticket);
    expect(ticket.state).toBe('verify');
    expect(offersOf(ticket).slice(0, 2)).toEqual(['checkBeforeLeaving', 'close']);
    take(ticket);
    expect(offersOf(ticket)[0]).toBe('close');
  });

  it('goes on where the fault came back after a remedy, which is a reproduction', () => {
    const ticket = new TriageCase().repaired().watch(30, 4);
    take(ticket);
    take(ticket.send({ type: 'reviewAudit', chainVersion: 3 }));
    expect(ticket.state).toBe('locateSide');
  });
});

describe('what second line said', () => {
  const given = (answer: Sent) =>
    new TriageCase()
      .substituting()
      .send({ type: 'escalate', question: 'What is it?', waivers: waiveAll })
      .sendWith({ role: 'support' }, { type: 'takeCase' })
      .sendWith({ role: 'support' }, answer);

  it('comes first where they direct a change, then their answer, then the case again', () => {
    const step = {
      type: 'directStep',
      requestId: uuid(7),
      text: 'Reseat it',
      change: { kind: 'reseat', target: link('L3') },
    } as const;
    const ticket = given(step);
    expect(offersOf(ticket)[0]).toBe('declareChange reseat link:L3');
    expect(JSON.stringify(planOf(ticket).sentence)).toContain('Reseat it');
    ticket.tried('reseat', link('L3'), 'persists').send({ type: 'restoreChange' });
    expect(offersOf(ticket)[0]).toBe(`answerRequest ${uuid(7)}`);
    take(ticket);
    expect(offersOf(ticket)[0]).toBe('escalate');
    expect(planOf(ticket).offers[0]?.steps[0]).toMatchObject({ question: 'What is it?' });
  });

  it('is answered where they ask for words only', () => {
    const ticket = given({ type: 'directStep', requestId: uuid(7), text: 'Read the EDID' });
    expect(offersOf(ticket)[0]).toBe(`answerRequest ${uuid(7)}`);
  });

  it('is said where they gave the case back, until the work goes on', () => {
    const ticket = given({ type: 'handBack', reason: 'Try the other input' });
    expect(JSON.stringify(planOf(ticket).sentence)).toContain('Try the other input');
    ticket.wait(1).tried('reseat', link('L3'), 'persists');
    expect(JSON.stringify(planOf(ticket).sentence)).not.toContain('Try the other input');
  });
});

describe('the commands allowed now', () => {
  it('list no change where none applies, and no culprit that nothing has shown', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    ticket.send({ type: 'keepChange' });
    expect(ticket.allowed()).not.toContain('declareChange');
    expect(ticket.allowed()).toContain('nameCulprit');
  });

  it('list no taking back of what was taken back', () => {
    const ticket = new TriageCase().baseline().watch(60, 1);
    const [seen] = ticket.lastWatch.occurrences;
    ticket.send({
      type: 'withdrawOccurrence',
      occurrenceId: seen?.id ?? '',
      reason: 'It was the screen saver',
    });
    expect(ticket.allowed()).not.toContain('withdrawOccurrence');
  });
});
