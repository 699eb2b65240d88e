import { describe, expect, it } from 'vitest';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import { completeness } from '../../../state-machines/index.ts';
import { homeCinema, withDevice, withPort } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link } from './triage-events.ts';

const items = (ticket: TriageCase): string[] => completeness(ticket.record).map(({ item }) => item);
const missing = (ticket: TriageCase, item: string) =>
  completeness(ticket.record).filter((each) => each.item === item);

const photos = (ticket: TriageCase, linkId: string, ...shows: NonNullable<EvidenceRef['tie']['shows']>[]) =>
  shows.map((view) => ticket.addEvidence({ kind: 'photo', tie: { linkId, shows: view } }));

describe('completeness of a case', () => {
  it('at the start lacks everything but the EDID, which belongs to the input side', () => {
    expect(items(new TriageCase())).toEqual([
      'audit',
      'whatChanged',
      'reproduction',
      'side',
      'substitution',
      'firmware',
      'settings',
      'linkPhotos',
      'logs',
    ]);
  });

  it('is reached item by item', () => {
    const ticket = new TriageCase().substituting().tried('reseat', link('L3'), 'persists');
    for (const deviceId of ['player', 'streamer', 'receiver', 'processor', 'projector']) {
      expect(missing(ticket, 'firmware')[0]?.place).toEqual({ kind: 'device', deviceId });
      ticket.addEvidence({
        kind: 'firmware',
        tie: { deviceId },
        reading: { kind: 'firmware', level: '2.0' },
      });
    }
    expect(missing(ticket, 'firmware')).toEqual([]);
    expect(missing(ticket, 'settings')).toMatchObject([{ place: { kind: 'device', deviceId: 'processor' } }]);
    const values = { EDID: 'auto' };
    const tie = { deviceId: 'processor' };
    ticket.addEvidence({ kind: 'settings', tie, reading: { kind: 'settings', phase: 'apart', values } });
    photos(ticket, 'L3', 'sourceEnd', 'sinkEnd');
    expect(missing(ticket, 'linkPhotos')).toMatchObject([
      {
        place: link('L3'),
        text: {
          code: 'photosMissing',
          values: { cable: { linkId: 'L3' }, views: [{ code: 'viewLabel' }] },
        },
      },
    ]);
    photos(ticket, 'L3', 'label');
    expect(missing(ticket, 'edid')).toMatchObject([{ place: { kind: 'device', deviceId: 'processor' } }]);
    ticket.addEvidence({ kind: 'edid', tie });
    const seen = ticket.record.watches[0]?.occurrences[0]?.at ?? '';
    const later = new Date(Date.parse(seen) + 60_000).toISOString();
    ticket.addEvidence({ kind: 'log', span: { from: later, to: later } });
    expect(items(ticket)).toEqual(['logs']);
    ticket.addEvidence({ kind: 'log', span: { from: seen, to: later } });
    expect(items(ticket)).toEqual([]);
    expect(ticket.send({ type: 'escalate', question: 'Is it the receiver?' }).state).toBe(
      'escalated.waiting',
    );
  });

  it('takes what the chain as found says of firmware, settings and EDID', () => {
    const told = withPort(
      withDevice(homeCinema(), 'processor', { firmware: '3.1', settings: { EDID: 'auto' } }),
      'processor',
      'in1',
      { edidHex: '00ffffffffffff00' },
    );
    const ticket = new TriageCase({ chain: told }).substituting();
    expect(missing(ticket, 'settings')).toEqual([]);
    expect(missing(ticket, 'edid')).toEqual([]);
    expect(missing(ticket, 'firmware').map(({ place }) => place)).not.toContainEqual({
      kind: 'device',
      deviceId: 'processor',
    });
  });

  it('asks for firmware along the picture that is watched, not of the parallel branch', () => {
    const devices = missing(new TriageCase().substituting(), 'firmware').map(({ place }) => place);
    expect(devices).not.toContainEqual({ kind: 'device', deviceId: 'television' });
    expect(devices).toContainEqual({ kind: 'device', deviceId: 'projector' });
  });

  it('on the output side wants no EDID, and photos of the cable that leaves', () => {
    const ticket = new TriageCase().substituting('processor', 'vanished');
    expect(items(ticket)).not.toContain('edid');
    expect(missing(ticket, 'linkPhotos').map(({ place }) => place)).toEqual([link('L4')]);
  });

  it('wants photos of the cable that a change has shown, wherever the side was concluded', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L1'), 'cleared');
    expect(missing(ticket, 'linkPhotos').map(({ place }) => place)).toEqual([link('L1')]);
  });

  it('counts a retest only when it means something', () => {
    const ticket = new TriageCase()
      .substituting()
      .declare('reseat', link('L3'))
      .send({ type: 'applyChange' });
    ticket.watch(5, 0).send({ type: 'judgeRetest' });
    expect(items(ticket)).toContain('substitution');
    ticket.watch(60, 0).send({ type: 'judgeRetest' });
    expect(items(ticket)).not.toContain('substitution');
  });

  it('does not count what was withdrawn', () => {
    const ticket = new TriageCase().substituting();
    photos(ticket, 'L3', 'sourceEnd', 'sinkEnd', 'label');
    expect(items(ticket)).not.toContain('linkPhotos');
    ticket.withdrawEvidence(ticket.record.evidence[2]?.id ?? '', 'Another cable’s label');
    expect(missing(ticket, 'linkPhotos')[0]?.text).toMatchObject({
      code: 'photosMissing',
      values: { views: [{ code: 'viewLabel' }] },
    });
    expect(ticket.record.evidence).toHaveLength(3);
    expect(ticket.record.evidence[2]?.withdrawn).toMatchObject({ reason: 'Another cable’s label' });
  });

  it('starts again in a new round', () => {
    const ticket = new TriageCase().closed().send({ type: 'reopen', reason: 'It is back' });
    expect(items(ticket)).toContain('reproduction');
    expect(items(ticket)).toContain('side');
    expect(items(ticket)).toContain('substitution');
  });
});

describe('evidence', () => {
  it('ties to watches and changes of the ticket, under an id that is new', () => {
    const ticket = new TriageCase().reproduced();
    const watchId = ticket.lastWatch.id;
    const id = ticket.addEvidence({ kind: 'log', tie: { watchId } });
    expect(() => ticket.addEvidence({ id })).toThrow('evidenceIdTaken');
    expect(() => ticket.addEvidence({ tie: { watchId: id } })).toThrow('ticketHasNoSuchWatch');
    expect(() => ticket.addEvidence({ tie: { changeId: id } })).toThrow('ticketHasNoSuchChange');
  });

  it('is withdrawn once', () => {
    const ticket = new TriageCase();
    const id = ticket.addEvidence({ kind: 'photo' });
    ticket.withdrawEvidence(id, 'Blurred');
    expect(() => ticket.withdrawEvidence(id, 'Blurred')).toThrow('evidenceWithdrawnAlready');
    expect(() => ticket.withdrawEvidence(ticket.newId(), 'Blurred')).toThrow('evidenceUnknown');
  });
});
