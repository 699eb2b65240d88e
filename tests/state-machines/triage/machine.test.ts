import { describe, expect, it } from 'vitest';
import { getStateNodes } from 'xstate/graph';
import { ticketCommandTypes } from '../../../shared/contract/commands.ts';
import {
  allowedCommands,
  MACHINE_VERSION,
  openTriage,
  stateName,
  triageMachine,
} from '../../../state-machines/index.ts';
import { isRuleName, rules } from '../../../state-machines/triage/rules/index.ts';
import { TriageCase } from './triage-case.ts';
import { opening } from './triage-events.ts';

const transitions = [triageMachine.root, ...getStateNodes(triageMachine)].flatMap((node) =>
  [...node.transitions.values()].flat(),
);

describe('the machine', () => {
  it('guards every event by the rule of the same name, which is for that event, and applies that rule', () => {
    expect(transitions.length).toBeGreaterThan(80);
    for (const { eventType, guard, actions } of transitions) {
      if (!isRuleName(guard)) throw new Error(`${eventType} is guarded by no rule`);
      expect(rules[guard].on, guard).toBe(eventType);
      expect(actions[0], guard).toBe(guard);
    }
  });

  it('uses every rule, and has a place for every command', () => {
    expect(new Set(transitions.map(({ guard }) => guard))).toEqual(new Set(Object.keys(rules)));
    const events = new Set(transitions.map(({ eventType }) => eventType));
    expect(events).toEqual(new Set([...ticketCommandTypes, 'evidenceAdded', 'evidenceWithdrawn']));
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
  it('say in plain words what each does there', () => {
    const label = (ticket: TriageCase, type: string) =>
      allowedCommands(ticket.snapshot, 'technician').find((command) => command.type === type)?.label;
    expect(label(new TriageCase().baseline(), 'startWatch')).toBe('Watch for the fault');
    expect(label(new TriageCase().reproduced(), 'startWatch')).toBe(
      'Put up a device’s menu and watch whether it stays when the fault comes',
    );
    expect(label(new TriageCase().repaired(), 'startWatch')).toBe('Watch whether the remedy holds');
    expect(label(new TriageCase().reproduced(), 'withdrawOccurrence')).toBe(
      'Withdraw an occurrence that was recorded by mistake',
    );
  });

  it('fit the role: a dispatcher sees a dispatcher’s', () => {
    const ticket = new TriageCase().substituting();
    expect(ticket.allowed('dispatcher')).toEqual(['note', 'amendIntake', 'answerWhatChanged']);
    expect(ticket.allowed('support')).toEqual(['note']);
    expect(ticket.allowed('admin')).toEqual(ticket.allowed('technician'));
  });
});
