import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type TicketCommandType, ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { replacedIn } from '../../../shared/contract/json-pointer.ts';
import { retestCodes } from '../../../shared/message/codes/retest.ts';
import { eventForms } from '../../../src/features/ticket-record/event-forms.ts';
import type { TriageEvent, TriageEventType } from '../../../state-machines/index.ts';
import { commandOf, picks } from '../../state-machines/triage/any-commands.ts';
import { TriageCase } from '../../state-machines/triage/triage-case.ts';
import { link, opening } from '../../state-machines/triage/triage-events.ts';

/** The innermost values of a document, by their pointers. */
function leavesOf(document: unknown): Set<string> {
  const pointers = new Set<string>();
  replacedIn(document, (value, pointer) => {
    if (typeof value !== 'object' || value === null) pointers.add(pointer);
    return undefined;
  });
  return pointers;
}

/** Pointers to what an event holds and none of its forms describes. */
function undescribedIn({ type, at, by, ...payload }: TriageEvent): string[] {
  const described = (eventForms.get(type) ?? []).map((form) => leavesOf(form.parse({ type, ...payload })));
  return [...leavesOf(payload)].filter((pointer) => !described.some((leaves) => leaves.has(pointer)));
}

const starts = [
  () => new TriageCase(),
  () => new TriageCase().reproduced(),
  () => new TriageCase().substituting(),
  () => new TriageCase().culpritNamed(),
  () => new TriageCase().closed(),
];

/** Events of tickets that go as chance has it, with a leaning to what was not sent yet. */
function manyEvents(): TriageEvent[] {
  const sent = new Set<string>();
  const tickets = starts.flatMap((start) => [start(), start(), start(), start(), start(), start()]);
  for (const [seed, ticket] of tickets.entries()) {
    for (const [at, chance] of fc.sample(picks, { numRuns: 40, seed }).entries()) {
      const allowed = (['technician', 'support'] as const).flatMap(
        (role) => ticket.allowed(role) as TicketCommandType[],
      );
      const fresh = allowed.filter((type) => !sent.has(type));
      const command = commandOf(fresh.length > 0 ? fresh : allowed, chance, ticket.snapshot);
      ticket.wait(chance.minutes % 40).attempt(command);
      if (at % 20 === 10 && ticket.state !== 'closed') ticket.addEvidence({ kind: 'log' });
    }
    for (const { type } of ticket.log) sent.add(type);
  }
  return tickets.flatMap(({ log }) => log);
}

/** What was brought in turns out wrong: a reproduction's only occurrence, and an item of evidence. */
function withdrawn(): TriageCase {
  const ticket = new TriageCase().baseline().watch(60, 1).send({ type: 'acceptReproduction' });
  const reading = { kind: 'note', text: 'It hums.' } as const;
  ticket.withdrawEvidence(ticket.addEvidence({ kind: 'note', reading }), 'Of another chain.');
  const occurrenceId = ticket.record.watches[0]?.occurrences[0]?.id ?? '';
  return ticket.send({ type: 'withdrawOccurrence', occurrenceId, reason: 'Pressed by accident' });
}

/** A client's diary, with a report of it that is answered, and one that counts for nothing. */
function reported(): TriageCase {
  const ticket = new TriageCase();
  const diaryId = ticket.openDiary();
  const reportId = ticket.report(diaryId, 5);
  ticket.bring({ type: 'reportAnswered', reportId, lasted: 'aMoment', cameBack: 'byItself' });
  ticket.send({ type: 'withdrawReport', reportId: ticket.report(diaryId), reason: 'Tapped by a child' });
  return ticket.bring({ type: 'diaryClosed', diaryId });
}

/** A part is replaced on suspicion, by the client's choice, and asked after. */
function replaced(): TriageCase {
  return new TriageCase()
    .substituting()
    .send(
      { type: 'recordChoice', way: 'replace', chosenBy: 'Mrs Overwell' },
      { type: 'replaceOnSuspicion', place: link('L4'), what: 'A new cable' },
      { type: 'finishRemedy', asLeftChainVersion: 4 },
      { type: 'close' },
      { type: 'recordFollowUp', heard: 'held', note: 'By phone' },
    );
}

/** A change that is left in for days, in which a log shows the fault. */
function leftIn(): TriageCase {
  const ticket = new TriageCase().substituting();
  ticket.send(
    { type: 'declareChange', kind: 'replaceCable', target: link('L3'), expected: 'It stays away' },
    { type: 'applyChange' },
  );
  ticket.send(commandOf(['leaveInPlace'], { what: 0, which: 1, minutes: 0 } as never, ticket.snapshot));
  const evidenceId = ticket.wait(1440).addEvidence({ kind: 'log' });
  return ticket.send({
    type: 'endUnattended',
    firmware: [{ deviceId: 'processor', level: null }],
    logged: [{ occurredAt: ticket.now, evidenceId }],
  });
}

/** What chance hardly comes to, or no command alone leads to. */
const beside: TriageEvent[] = [
  ...new TriageCase()
    .baseline()
    .sendWith({ figures: { ...opening.settings, revision: 2 } }, { type: 'startWatch' }).log,
  ...withdrawn().log,
  ...reported().log,
  ...leftIn().log,
  ...replaced().log,
  ...new TriageCase().repaired().watch(20, 1).send({ type: 'faultCameBack', reason: 'Seen again' }).log,
  ...new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared').send({ type: 'keepChange' })
    .log,
];

const events = [...manyEvents(), ...beside];

it('what a verdict says is among the messages about retests', () => {
  const verdicts = events.filter((event) => event.type === 'judgeRetest');
  const said = verdicts.flatMap(({ outcome: { judgement } }) => [
    ...judgement.reasons,
    ...judgement.warnings,
  ]);
  expect(said.length).toBeGreaterThan(0);
  expect(said.filter(({ code }) => !(code in retestCodes))).toEqual([]);
});

it('the forms of events describe all that events of the machine hold', () => {
  const types: TriageEventType[] = [
    ...ticketCommandTypes,
    'evidenceAdded',
    'evidenceWithdrawn',
    'diaryOpened',
    'diaryClosed',
    'occurrenceReported',
    'reportAnswered',
    'figuresChanged',
    'reproductionRevised',
  ];
  const met = new Set(events.map(({ type }) => type));
  expect(types.filter((type) => !met.has(type))).toEqual([]);
  const undescribed = events.flatMap((event) =>
    undescribedIn(event).map((pointer) => `${event.type} ${pointer}`),
  );
  // Who sent it, by role: one of a few names.
  const expected = [...met].map((type) => `${type} /role`);
  expect([...new Set(undescribed)].toSorted()).toEqual(expected.toSorted());
});
