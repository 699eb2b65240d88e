import { describe, expect, it } from 'vitest';
import { workingStates } from '../../../shared/contract/triage.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, members, type Sent, uuid, waiveAll, waivers } from './triage-events.ts';
import { working } from './working-states.ts';

const escalate = { type: 'escalate', question: 'Is this the receiver?', waivers: waiveAll } satisfies Sent;
const recall = { type: 'recall', reason: 'Found it myself' } satisfies Sent;

describe.each(workingStates)('escalating from %s', (state) => {
  it('hands the case over, and comes back to where the work stood', () => {
    const ticket = working[state]();
    expect(ticket.state).toBe(state);
    const { resumeAt, escalations, ...before } = ticket.record;
    expect(ticket.send(escalate).state).toBe('escalated.waiting');
    expect(ticket.record.resumeAt).toBe(state);
    expect(ticket.send(recall).state).toBe(state);
    expect(ticket.record).toMatchObject({ ...before, resumeAt: null });
    ticket.send(escalate, { type: 'takeCase' });
    expect(ticket.state).toBe('escalated.underReview');
    expect(ticket.send({ type: 'handBack', reason: 'Watch longer first' }).state).toBe(state);
    ticket.send(
      escalate,
      { type: 'takeCase' },
      { type: 'directStep', text: 'Read the EDID at the processor' },
    );
    expect(ticket.state).toBe(state);
    expect(ticket.record.escalations.map(({ version, outcome }) => [version, outcome?.kind])).toEqual([
      [1, 'recalled'],
      [2, 'handedBack'],
      [3, 'stepDirected'],
    ]);
    const [step] = ticket.record.requests;
    expect(step).toMatchObject({ kind: 'step', answer: null });
    ticket.send({ type: 'answerRequest', requestId: step?.id ?? '', text: 'Read: it names 4K at 60 Hz' });
    expect(ticket.record.requests[0]?.answer?.text).toBe('Read: it names 4K at 60 Hz');
  });

  it('may end in acceptance: then there is a culprit, and a way to the end of the ticket', () => {
    const ticket = working[state]().send(escalate, { type: 'takeCase' });
    const place = state === 'baseline' ? null : device('receiver');
    ticket.send({ type: 'acceptCase', finding: 'A known fault of this receiver', place });
    expect(ticket.state).toBe('culpritFound');
    expect(ticket.record.culprit).toMatchObject({
      namedBy: 'support',
      place: place ?? { kind: 'chain' },
      confirmation: { kind: 'notDone', reason: 'A known fault of this receiver' },
    });
    expect(ticket.record.resumeAt).toBeNull();
    if (ticket.allowed().includes('restoreChange')) ticket.send({ type: 'restoreChange' });
    if (ticket.allowed().includes('withdrawChange'))
      ticket.send({ type: 'withdrawChange', reason: 'Not needed' });
    ticket.send(
      { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'The receiver was replaced' } },
      { type: 'finishRemedy', asLeftChainVersion: 9 },
      { type: 'close', override: { reason: 'Second line has tested it' } },
    );
    expect(ticket.state).toBe('closed');
  });

  it('may end in acceptance that is withdrawn: the work goes on where the record stands', () => {
    const ticket = working[state]().send(escalate, { type: 'takeCase' });
    ticket.send({ type: 'acceptCase', finding: 'A known fault of this receiver' });
    ticket.send({ type: 'withdrawCulprit', reason: 'The new receiver does it too' });
    const settled = ['culpritFound', 'remedy', 'verify'].includes(state);
    expect(ticket.state).toBe(settled ? 'substitute.ready' : state);
  });
});

describe('a case that is incomplete', () => {
  it('is refused with the list of what is missing', () => {
    const ticket = new TriageCase().baseline();
    const refusal = ticket.refused({ type: 'escalate', question: 'What now?' });
    expect(refusal.type).toBe('case-incomplete');
    expect([...new Set(refusal.missing?.map(({ item }) => item))]).toEqual([
      'reproduction',
      'side',
      'substitution',
      'firmware',
      'settings',
      'linkPhotos',
      'logs',
    ]);
  });

  it('goes with a reason for each missing item, and only then', () => {
    const ticket = new TriageCase().baseline();
    const some = waivers('reproduction', 'side', 'substitution', 'firmware', 'settings', 'linkPhotos');
    const refusal = ticket.refused({ type: 'escalate', question: 'What now?', waivers: some });
    expect(refusal.missing?.map(({ item }) => item)).toEqual(['logs']);
    ticket.send({ type: 'escalate', question: 'What now?', waivers: [...some, ...waivers('logs')] });
    expect(ticket.record.escalations).toMatchObject([{ version: 1, question: 'What now?', takenBy: null }]);
    expect(ticket.record.escalations[0]?.waivers).toHaveLength(7);
  });
});

describe('while second line has the case', () => {
  const taken = () => new TriageCase().substituting().send(escalate, { type: 'takeCase' });
  const asked = () =>
    taken().send({
      type: 'askForMore',
      requests: [
        { requestId: uuid(51), item: 'edid', text: 'The EDID at the processor' },
        { requestId: uuid(52), text: 'What else is in the rack?' },
      ],
    });

  it('the technician may note, answer and add evidence, and not change anything', () => {
    const ticket = new TriageCase().substituting().send(escalate);
    expect(ticket.allowed()).toEqual([
      'note',
      'amendIntake',
      'answerWhatChanged',
      'recordLook',
      'resubmit',
      'recall',
    ]);
    ticket.addEvidence({ kind: 'edid', tie: { deviceId: 'processor' } });
    const change = {
      type: 'declareChange',
      kind: 'reseat',
      target: link('L3'),
      expected: 'It stays away',
    } as const;
    expect(ticket.refused(change).type).toBe('not-allowed-now');
  });

  it('is not taken back once somebody has taken it', () => {
    expect(taken().refused(recall).type).toBe('not-allowed-now');
  });

  it('is taken by one, and may be taken over by another', () => {
    const ticket = taken();
    expect(ticket.record.escalations[0]?.takenBy).toBe(members.support);
    expect(ticket.refused({ type: 'takeCase' }).type).toBe('not-allowed-now');
    expect(ticket.allowed('support')).toEqual([
      'note',
      'takeCase',
      'askForMore',
      'directStep',
      'acceptCase',
      'handBack',
    ]);
  });

  it('sees the technician’s answers come back as a new version', () => {
    const ticket = asked();
    expect(ticket.state).toBe('escalated.moreRequested');
    expect(ticket.refused({ type: 'resubmit' })).toMatchObject({
      type: 'request-open',
      requestIds: [uuid(51), uuid(52)],
    });
    const evidenceIds = [ticket.addEvidence({ kind: 'edid', tie: { deviceId: 'processor' } })];
    ticket.send({ type: 'answerRequest', requestId: uuid(51), text: 'Here it is', evidenceIds });
    expect(ticket.refused({ type: 'resubmit' })).toMatchObject({ requestIds: [uuid(52)] });
    ticket.send(
      { type: 'answerRequest', requestId: uuid(52), text: 'A network switch' },
      { type: 'resubmit' },
    );
    expect(ticket.state).toBe('escalated.underReview');
    expect(ticket.record.escalations).toMatchObject([
      { version: 1, outcome: { kind: 'resubmitted' } },
      { version: 2, question: escalate.question, takenBy: members.support, outcome: null },
    ]);
  });

  it('takes answers to what was asked, once, with evidence that there is', () => {
    const ticket = asked();
    const answer = (requestId: string, evidenceIds: string[] = []) =>
      ({ type: 'answerRequest', requestId, text: 'Here it is', evidenceIds }) satisfies Sent;
    expect(ticket.refused(answer(uuid(53))).type).toBe('unknown-reference');
    expect(ticket.refused(answer(uuid(51), [uuid(54)])).type).toBe('unknown-reference');
    ticket.send(answer(uuid(51)));
    expect(ticket.refused(answer(uuid(51))).type).toBe('not-allowed-now');
  });

  it('may be handed back, directed or accepted while answers are open', () => {
    expect(asked().send({ type: 'handBack', reason: 'Never mind' }).state).toBe('substitute.ready');
    expect(asked().send({ type: 'acceptCase', finding: 'Known fault' }).state).toBe('culpritFound');
    expect(asked().send({ type: 'directStep', text: 'Try the other port' }).state).toBe('substitute.ready');
  });

  it('may be sent anew while it waits, with waivers for what has become incomplete', () => {
    const ticket = new TriageCase()
      .substituting()
      .send(escalate)
      .send({ type: 'resubmit', question: 'Or the cable?' });
    expect(ticket.state).toBe('escalated.waiting');
    expect(ticket.record.escalations).toMatchObject([
      { version: 1 },
      { version: 2, question: 'Or the cable?' },
    ]);
    expect(ticket.record.escalations[1]?.waivers).toEqual(waiveAll);
  });

  it('names places and ids that fit', () => {
    const change = { kind: 'reseat', target: link('L99') } as const;
    expect(taken().refused({ type: 'directStep', text: 'Reseat it', change }).type).toBe('unknown-reference');
    const finding = { type: 'acceptCase', finding: 'Known fault', place: device('nowhere') } as const;
    expect(taken().refused(finding).type).toBe('unknown-reference');
    const again = { type: 'askForMore', requests: [{ requestId: uuid(51), text: 'Once more' }] } as const;
    expect(asked().refused({ ...again, requests: [...again.requests] }).type).toBe('already-exists');
  });
});

describe('an accepted case with a change still in place', () => {
  const accepted = (kind: 'bypassDevice' | 'replaceCable' = 'bypassDevice') => {
    const target = kind === 'bypassDevice' ? device('receiver') : link('L3');
    const ticket = new TriageCase().substituting().tried(kind, target, 'cleared');
    return ticket.send(escalate, { type: 'takeCase' }, { type: 'acceptCase', finding: 'Known fault' });
  };
  const repair = { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'Replaced' } } satisfies Sent;

  it('blocks the remedy until it is put back', () => {
    const ticket = accepted();
    expect(ticket.refused(repair).type).toBe('diagnostic-change-in-place');
    expect(ticket.allowed()).not.toContain('chooseRemedy');
    ticket.send({ type: 'restoreChange' });
    expect(ticket.state).toBe('culpritFound');
    expect(ticket.send(repair).state).toBe('remedy');
  });

  it('lets it stay where it may', () => {
    expect(accepted().refused({ type: 'keepChange' }).type).toBe('change-cannot-stay');
    const ticket = accepted('replaceCable');
    expect(ticket.refused(repair).type).toBe('change-open');
    expect(ticket.send({ type: 'keepChange' }, repair).state).toBe('remedy');
  });

  it('goes back to the change when the culprit is withdrawn', () => {
    const ticket = accepted().send({ type: 'withdrawCulprit', reason: 'It is not that' });
    expect(ticket.state).toBe('substitute.judged');
    expect(ticket.send({ type: 'restoreChange' }).state).toBe('substitute.ready');
  });
});
