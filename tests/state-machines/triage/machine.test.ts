import { describe, expect, it } from 'vitest';
import { getStateNodes } from 'xstate/graph';
import { type TicketCommandType, ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { message } from '../../../shared/message/message.ts';
import {
  allowedCommands,
  MACHINE_VERSION,
  openTriage,
  stateName,
  triageMachine,
} from '../../../state-machines/index.ts';
import { invariants } from '../../../state-machines/triage/invariants.ts';
import { consequences } from '../../../state-machines/triage/rules/consequences.ts';
import { isRuleName, rules } from '../../../state-machines/triage/rules/index.ts';
import { TriageCase } from './triage-case.ts';
import { opening } from './triage-events.ts';

const transitions = [triageMachine.root, ...getStateNodes(triageMachine)].flatMap((node) =>
  [...node.transitions.values()].flat(),
);

describe('the machine', () => {
  it('takes every command by a rule for it, behind invariants alone', () => {
    expect(transitions.length).toBeGreaterThan(80);
    for (const { eventType, guard, actions } of transitions) {
      const [action] = actions;
      if (isRuleName(action)) expect(rules[action].on).toBe(eventType);
      else expect(Object.keys(consequences)).toContain(action);
      if (typeof guard !== 'object' || !('params' in guard))
        throw new Error(`${eventType} has another guard`);
      expect(guard.type).toBe('hold');
      expect(Object.keys(invariants)).toEqual(expect.arrayContaining(guard.params as string[]));
    }
  });

  it('uses every rule, consequence and invariant, and has a place for every command', () => {
    const actions = new Set(transitions.map(({ actions: [action] }) => action));
    expect(actions).toEqual(new Set([...Object.keys(rules), ...Object.keys(consequences)]));
    const events = new Set(transitions.map(({ eventType }) => eventType));
    const news = [
      'evidenceAdded',
      'evidenceWithdrawn',
      'diaryOpened',
      'diaryClosed',
      'occurrenceReported',
      'reportAnswered',
    ];
    expect(events).toEqual(new Set([...ticketCommandTypes, ...news, ...Object.keys(consequences)]));
    const holding = transitions.flatMap(({ guard }) => (guard as { params: string[] }).params);
    expect(new Set(holding)).toEqual(new Set(Object.keys(invariants)));
  });
});

describe('a snapshot', () => {
  it('is plain JSON that names its machine’s version, state and record', () => {
    const snapshot = openTriage(opening);
    expect(JSON.parse(JSON.stringify(snapshot))).toStrictEqual(snapshot);
    expect(snapshot).toMatchObject({ machineVersion: MACHINE_VERSION, value: 'baseline' });
    expect(Object.keys(snapshot).sort()).toEqual(['context', 'machineVersion', 'value']);
  });

  it('has a name for its state, parts joined by dots', () => {
    expect(stateName(new TriageCase().snapshot)).toBe('baseline');
    expect(stateName(new TriageCase().substituting().snapshot)).toBe('substitute.ready');
  });
});

describe('the commands allowed now', () => {
  it('say what each does, by its own name', () => {
    const allowed = allowedCommands(new TriageCase().reproduced().snapshot, 'technician');
    expect(allowed.map(({ type }) => type)).toContain('withdrawOccurrence');
    for (const { type, label } of allowed)
      expect(label).toEqual(message('commandLabel', { command: type as TicketCommandType }));
  });

  it('fit the role: a dispatcher sees a dispatcher’s', () => {
    const ticket = new TriageCase().substituting();
    expect(ticket.allowed('dispatcher').toSorted()).toEqual([
      'amendIntake',
      'answerWhatChanged',
      'note',
      'recordChoice',
      'waitFor',
    ]);
    expect(ticket.allowed('support')).toEqual(['note']);
    expect(ticket.allowed('admin')).toEqual(ticket.allowed('technician'));
  });
});
