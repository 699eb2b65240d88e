import { describe, expect, it } from 'vitest';
import type { LookSent, SignalSeen } from '../../../shared/contract/look.ts';
import { completeness, menuQualitiesAt } from '../../../state-machines/index.ts';
import { homeCinema, withDevice } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { opening, type Sent } from './triage-events.ts';

type Look = Extract<Sent, { type: 'recordLook' }>['what'];
const look = (what: Look): Sent => ({ type: 'recordLook', what });

/** The home cinema with nothing known of the processor's menu. */
const unknownMenu = withDevice(homeCinema(), 'processor', {
  menuSurvivesLossOfInput: 'unknown',
  menuKeepsFormat: 'unknown',
});
const menu = (survivesLossOfInput: 'yes' | 'no', keepsFormat: 'yes' | 'no' | 'unknown' = 'yes'): Sent =>
  look({ kind: 'menu', deviceId: 'processor', survivesLossOfInput, keepsFormat });

describe('a menu of which nothing is known', () => {
  it('tells no side where it vanished, until both of its qualities are known', () => {
    const ticket = new TriageCase({ chain: unknownMenu }).reproduced().menuWatch('processor', 'vanished');
    const conclude: Sent = { type: 'concludeSide', deviceId: 'processor' };
    expect(ticket.refused(conclude).said.code).toBe('menuQualitiesNotKnown');
    ticket.send(menu('yes', 'unknown'));
    expect(ticket.refused(conclude).said.code).toBe('menuQualitiesNotKnown');
    ticket.send(menu('yes')).send(conclude);
    expect(ticket.record.sides).toMatchObject([{ deviceId: 'processor', side: 'output' }]);
  });

  it('tells downstream all the same of a tint that is in the menu too', () => {
    const symptom = { ...opening.symptom, kind: 'wrongColour' as const };
    const ticket = new TriageCase({ chain: unknownMenu, opening: { symptom } })
      .reproduced()
      .side('processor', 'vanished');
    expect(ticket.record.sides).toMatchObject([{ deviceId: 'processor', side: 'output' }]);
  });

  it('tells none where it falls with its input, and the side falls when that is found out later', () => {
    const ticket = new TriageCase().substituting('processor', 'vanished').send(menu('no'));
    expect(ticket.log.at(-1)).toMatchObject({ type: 'sideRevised', deviceId: 'processor', outcome: null });
    expect(ticket.state).toBe('locateSide');
    expect(ticket.refused({ type: 'concludeSide', deviceId: 'processor' }).said.code).toBe(
      'menuFallsWithInput',
    );
  });

  it('tells the side all the same where it stayed', () => {
    const ticket = new TriageCase({ chain: unknownMenu }).reproduced().side('processor', 'stayed');
    expect(ticket.record.sides).toMatchObject([{ side: 'input', proof: { kind: 'menu' } }]);
    ticket.send(menu('no'));
    expect(ticket.record.sides).toMatchObject([{ superseded: null }]);
  });

  it('is known by what was tried last, else by the description of the chain', () => {
    const ticket = new TriageCase().baseline();
    const known = () => menuQualitiesAt(ticket.record, homeCinema(), 'processor');
    expect(known()).toEqual({ survivesLossOfInput: 'yes', keepsFormat: 'yes' });
    ticket.send(menu('no', 'unknown'));
    expect(known()).toEqual({ survivesLossOfInput: 'no', keepsFormat: 'yes' });
    const lookId = ticket.record.looks.at(-1)?.id ?? '';
    ticket.send({ type: 'withdrawLook', lookId, reason: 'It was the other remote' });
    expect(known()).toEqual({ survivesLossOfInput: 'yes', keepsFormat: 'yes' });
  });
});

const signal = (facts: Partial<Extract<LookSent, { kind: 'signal' }>> & { said: SignalSaid }): Sent =>
  look({ kind: 'signal', deviceId: 'processor', moment: 'bad', ...facts } as Look);
type SignalSaid = Extract<Look, { kind: 'signal' }>['said'];
const hdr = {
  kind: 'signal' as const,
  hdr: 'static' as const,
  encoding: 'ycbcr422' as const,
  bitsPerComponent: 12 as const,
  resolution: null,
  refreshHz: null,
  protection: null,
  linkGbps: null,
} satisfies SignalSeen;

describe('a look', () => {
  it('is taken in every state of an open ticket, once the chain is recorded', () => {
    const ticket = new TriageCase();
    expect(ticket.refused(menu('yes')).said.code).toBe('recordAsFoundFirst');
    ticket.baseline().send(menu('yes'));
    expect(ticket.record.looks).toMatchObject([{ round: 1, changeId: null, withdrawn: null }]);
    ticket.send({ type: 'escalate', question: 'What is it?', waivers: everything });
    expect(ticket.allowed()).toContain('recordLook');
  });

  it('says the same as before by one word', () => {
    const ticket = new TriageCase().baseline();
    expect(ticket.refused(signal({ said: { kind: 'asBefore' } })).said.code).toBe('nothingReadBefore');
    ticket
      .send(signal({ moment: 'good', said: { kind: 'read', receives: hdr, sends: hdr, intended: [] } }))
      .send(signal({ said: { kind: 'asBefore' } }));
    const [good, bad] = ticket.record.looks;
    expect(bad?.what).toMatchObject({ moment: 'bad', receives: hdr, sends: hdr, sameAs: good?.id });
  });

  it('names the photo of it, which has to be there', () => {
    const ticket = new TriageCase().baseline();
    const evidenceId = ticket.addEvidence({ kind: 'photo', tie: { deviceId: 'processor' } });
    const command = signal({ said: { kind: 'read', receives: hdr, sends: null, intended: [] } });
    expect(ticket.refused({ ...command, evidenceId: ticket.newId() } as Sent).type).toBe('unknown-reference');
    ticket.send({ ...command, evidenceId } as Sent);
    expect(ticket.record.looks).toMatchObject([{ evidenceId }]);
  });

  it('is refused of what is not in the chain', () => {
    const ticket = new TriageCase().baseline();
    const nowhere = look({
      kind: 'menu',
      deviceId: 'nowhere',
      survivesLossOfInput: 'yes',
      keepsFormat: 'yes',
    });
    expect(ticket.refused(nowhere).said.code).toBe('deviceNotInChain');
    const port = look({
      kind: 'portMode',
      deviceId: 'processor',
      portId: 'in9',
      found: { kind: 'automatic' },
    });
    expect(ticket.refused(port).said.code).toBe('placeNotInChain');
  });
});

const everything = (
  [
    'audit',
    'whatChanged',
    'reproduction',
    'side',
    'substitution',
    'firmware',
    'settings',
    'linkPhotos',
    'edid',
    'logs',
  ] as const
).map((item) => ({ item, reason: 'Cannot be had' }));

const witness = (deviceId: string, answer: 'shows' | 'doesNotShow' | 'cannotSay'): Sent =>
  look({ kind: 'witness', deviceId, besideId: deviceId === 'streamer' ? 'player' : 'projector', answer });

describe('a witness', () => {
  it('that shows it leaves the part that both displays share', () => {
    const ticket = new TriageCase().reproduced().send(witness('television', 'shows'));
    ticket.send({ type: 'concludeSide', deviceId: 'receiver', from: 'witness' });
    expect(ticket.record.sides).toMatchObject([
      { deviceId: 'receiver', side: 'input', proof: { kind: 'witness' } },
    ]);
  });

  it('that does not show it leaves the rest', () => {
    const ticket = new TriageCase().reproduced().send(witness('television', 'doesNotShow'));
    ticket.send({ type: 'concludeSide', deviceId: 'receiver', from: 'witness' });
    expect(ticket.record.sides).toMatchObject([{ deviceId: 'receiver', side: 'output' }]);
  });

  it('among the sources tells the other way round', () => {
    const ticket = new TriageCase().reproduced().send(witness('streamer', 'shows'));
    ticket.send({ type: 'concludeSide', deviceId: 'receiver', from: 'witness' });
    expect(ticket.record.sides).toMatchObject([{ deviceId: 'receiver', side: 'output' }]);
  });

  it('that cannot say tells nothing, and two that contradict each other neither', () => {
    const ticket = new TriageCase().reproduced().send(witness('television', 'cannotSay'));
    const conclude: Sent = { type: 'concludeSide', deviceId: 'receiver', from: 'witness' };
    expect(ticket.refused(conclude).said.code).toBe('noWitnessAt');
    ticket.send(witness('television', 'shows'), witness('streamer', 'shows'));
    expect(ticket.refused(conclude).said.code).toBe('witnessesContradict');
  });

  it('has to be another display or source that shares a part of the way', () => {
    const ticket = new TriageCase().baseline();
    const beside = (deviceId: string, besideId: string) =>
      look({ kind: 'witness', deviceId, besideId, answer: 'shows' });
    for (const other of [beside('receiver', 'processor'), beside('projector', 'projector')])
      expect(ticket.refused(other).said.code).toBe('noWitness');
  });

  it('is taken back with its reason, and the side with it', () => {
    const ticket = new TriageCase().reproduced().send(menu('yes'), witness('television', 'shows'));
    ticket.send({ type: 'concludeSide', deviceId: 'receiver', from: 'witness' });
    const lookId = ticket.record.looks.at(-1)?.id ?? '';
    ticket.send({ type: 'withdrawLook', lookId, reason: 'It was another source' });
    expect(ticket.log.at(-1)).toMatchObject({ type: 'sideRevised', outcome: null });
    expect(ticket.refused({ type: 'withdrawLook', lookId, reason: 'Again' }).said.code).toBe(
      'lookWithdrawnAlready',
    );
  });
});

describe('going on without a side', () => {
  const goOn: Sent = { type: 'goOnWithoutSide', reason: 'No menu and no page on any device' };

  it('leads to substitution, with every place still possible, and is told to second line', () => {
    const ticket = new TriageCase().reproduced().send(goOn);
    expect(ticket.state).toBe('substitute.ready');
    expect(ticket.record.withoutSide).toMatchObject({ round: 1, reason: goOn.reason });
    ticket
      .declare('replaceCable', { kind: 'link', linkId: 'L1' })
      .send({ type: 'withdrawChange', reason: 'No cable' });
    ticket.declare('replaceCable', { kind: 'link', linkId: 'L4' });
    expect(ticket.state).toBe('substitute.declared');
    expect(missingSide(ticket)).toMatchObject([{ text: { code: 'workedWithoutSide' } }]);
  });

  it('has no place where a side is known, and ends where one is looked for again', () => {
    const known = new TriageCase().reproduced().side('processor', 'stayed');
    expect(known.refused(goOn).said.code).toBe('sideIsKnownAlready');
    const ticket = new TriageCase()
      .reproduced()
      .send(goOn, { type: 'locateSideAgain', reason: 'A page after all' });
    expect(ticket.state).toBe('locateSide');
    expect(ticket.record.withoutSide).toBeNull();
  });

  it('holds through naming a culprit and taking it back', () => {
    const ticket = new TriageCase().reproduced().send(goOn);
    ticket.tried('replaceCable', { kind: 'link', linkId: 'L3' }, 'cleared').send({ type: 'keepChange' });
    ticket.send({
      type: 'nameCulprit',
      changeId: ticket.lastChange.id,
      place: { kind: 'link', linkId: 'L3' },
      explanation: 'The fault stays away with the new cable',
      confirmation: { kind: 'notDone', reason: 'The old cable is gone' },
    });
    ticket.send({ type: 'withdrawCulprit', reason: 'It came again elsewhere' });
    expect(ticket.state).toBe('substitute.ready');
  });
});

const missingSide = (ticket: TriageCase) => completeness(ticket.record).filter(({ item }) => item === 'side');
