import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TicketCommandType, ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { triageRecord } from '../../../shared/contract/triage.ts';
import { english } from '../../../shared/message/en/index.ts';
import {
  allowedCommands,
  type CompleteCommand,
  commandRoles,
  decide,
  evolve,
  openChange,
  openTriage,
  replay,
  stateName,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { invariants } from '../../../state-machines/triage/invariants.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { commandOf, type Picks, picks } from './any-commands.ts';
import { isOpen, restingStates } from './exploration.ts';
import { TriageCase } from './triage-case.ts';
import { completeOf, opening, uuid } from './triage-events.ts';

/** What is to be expected of a ticket, kept beside it by much simpler means. */
type Model = { accepted: number; openChangeId: string | null };
type Real = { snapshot: TriageSnapshot; log: TriageEvent[]; nowMs: number; ids: number; states: Set<string> };

const chain = homeCinema();
const clone = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value));
function freeze<Value>(value: Value): Value {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const inner of Object.values(value)) freeze(inner);
  return value;
}

/** What a ticket's ordinary way is made of; without it, sequences at random hardly get beyond its beginning. */
const onTheWay: readonly string[] = [
  'reviewAudit',
  'recordAsFound',
  'startWatch',
  'recordOccurrence',
  'endWatch',
  'acceptReproduction',
  'concludeSide',
  'beginSubstitution',
  'declareChange',
  'applyChange',
  'judgeRetest',
  'restoreChange',
  'keepChange',
  'nameCulprit',
  'chooseRemedy',
  'finishRemedy',
  'close',
  'reopen',
] satisfies TicketCommandType[];

type From = 'allOfThem' | 'allowedNow' | 'onTheWay';

/** Sends one command: one on the way, one that is allowed now, or any at all. */
class Send implements fc.Command<Model, Real> {
  readonly picks: Picks;
  readonly from: From;
  constructor(picks: Picks, from: From) {
    this.picks = picks;
    this.from = from;
  }

  check = () => true;

  run(model: Model, real: Real): void {
    const command = this.complete(real);
    const before = freeze(real.snapshot);
    const decision = decide(before, command);
    if (decision.accepted) this.expectStep(model, real, { command, ...decision });
    else {
      const listed = allowedCommands(before, command.role, command.at);
      expect(decision.refusal.allowedNow).toEqual(listed);
      expect(Object.keys(english.sentences)).toContain(decision.refusal.said.code);
      if (decision.refusal.type === 'change-open') {
        expect(decision.refusal.openChangeId).toBe(model.openChangeId);
      }
    }
  }

  complete(real: Real): CompleteCommand {
    const command = commandOf(this.types(real), this.picks, real.snapshot);
    const happenedMs = real.nowMs;
    real.nowMs += this.picks.minutes * 60_000;
    const at = new Date(real.nowMs).toISOString();
    const happenedAt = this.picks.offline ? { happenedAt: new Date(happenedMs).toISOString() } : {};
    const newId = () => uuid(5000 + real.ids++);
    return completeOf({ ...command, ...happenedAt }, { at, newId, chain });
  }

  types(real: Real): readonly TicketCommandType[] {
    if (this.from === 'allOfThem') return ticketCommandTypes;
    const allowed = (['technician', 'support'] as const).flatMap((role) =>
      allowedCommands(real.snapshot, role).map(({ type }) => type as TicketCommandType),
    );
    const forward = allowed.filter((type) => onTheWay.includes(type));
    return this.from === 'onTheWay' && forward.length > 0 ? forward : allowed;
  }

  expectStep(
    model: Model,
    real: Real,
    step: { command: CompleteCommand; events: TriageEvent[]; snapshot: TriageSnapshot },
  ): void {
    const { command, events, snapshot: next } = step;
    const listed = allowedCommands(real.snapshot, command.role, command.at).map(({ type }) => type);
    expect(listed).toContain(command.type);
    if (command.type === 'declareChange') {
      expect(model.openChangeId).toBeNull();
      model.openChangeId = command.changeId;
    }
    if (command.type === 'enterLateChange') {
      expect(model.openChangeId).toBeNull();
      const isOpenNow = events.some((event) => invariants.changeStaysOpen(next.context, event));
      model.openChangeId = isOpenNow ? command.changeId : null;
    }
    if (['withdrawChange', 'restoreChange', 'keepChange'].includes(command.type)) model.openChangeId = null;
    model.accepted += events.length;
    expect(events.reduce(evolve, real.snapshot)).toStrictEqual(next);
    const open = next.context.changes.filter(isOpen).map(({ id }) => id);
    expect(open).toEqual(model.openChangeId === null ? [] : [model.openChangeId]);
    expect(restingStates).toContain(stateName(next));
    expect(triageRecord.parse(next.context)).toStrictEqual(next.context);
    expect(clone(next)).toStrictEqual(next);
    real.snapshot = clone(next);
    real.states.add(stateName(next));
    real.log.push(...events);
  }

  toString = () => `${this.from} ${JSON.stringify(this.picks)}`;
}

const sends = (from: From) => picks.map((each) => new Send(each, from));

/** Where a sequence begins: at the very start, or with the first stages behind it. */
const starts = [
  () => new TriageCase(),
  () => new TriageCase().reproduced(),
  () => new TriageCase().substituting(),
  () => new TriageCase().culpritNamed(),
  () => new TriageCase().closed(),
];

describe('any commands in any order', () => {
  it('leave the snapshot that replay of the log gives; refused ones leave it as it is', () => {
    const met = { longest: 0, states: new Set<string>(), types: new Set<string>() };
    const commands = [sends('onTheWay'), sends('onTheWay'), sends('allowedNow'), sends('allOfThem')];
    const sequences = fc.commands(commands, { maxCommands: 60, size: 'max' });
    fc.assert(
      fc.property(fc.constantFrom(...starts), sequences, (start, sequence) => {
        const { snapshot, log, now, record } = start();
        const model: Model = { accepted: log.length, openChangeId: openChange(record)?.id ?? null };
        const real: Real = { snapshot, log: [...log], nowMs: Date.parse(now), ids: 0, states: met.states };
        fc.modelRun(() => ({ model, real }), sequence);
        expect(real.log).toHaveLength(model.accepted);
        expect(replay(opening, clone(real.log))).toStrictEqual(real.snapshot);
        met.longest = Math.max(met.longest, model.accepted);
        for (const { type } of real.log) met.types.add(type);
      }),
      { numRuns: 60 },
    );
    expect(met.longest).toBeGreaterThan(20);
    expect(met.states.size).toBeGreaterThan(10);
    expect(met.types.size).toBeGreaterThan(30);
  }, 300_000);
});

describe('replay', () => {
  it('gives the snapshot of a whole ticket, second round and second line included', () => {
    const ticket = new TriageCase().closed().send({ type: 'reopen', reason: 'It is back' }).watch(30, 2);
    ticket.send({ type: 'acceptReproduction' }).side('receiver', 'vanished');
    ticket.addEvidence({ kind: 'edid', tie: { deviceId: 'receiver' } });
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('stops at an event that the machine does not accept', () => {
    const ticket = new TriageCase().reproduced();
    const event = ticket.log.at(-1);
    expect(event?.type).toBe('acceptReproduction');
    expect(() => replay(opening, [...ticket.log, ...(event === undefined ? [] : [event])])).toThrow(
      /^Event \d+ of the log: ‘acceptReproduction’ is not taken/,
    );
  });
});

describe('who may send what', () => {
  it('is refused by role, whatever the state', () => {
    for (const type of ticketCommandTypes) {
      for (const role of ['dispatcher', 'technician', 'support', 'admin'] as const) {
        const from = { what: 0, which: 1, minutes: 0, offline: false };
        const snapshot = openTriage(opening);
        const command = commandOf([type], from, snapshot);
        const stamp = { at: opening.at, newId: () => uuid(77), chain, role };
        const decision = decide(snapshot, completeOf(command, stamp));
        const byRole = !decision.accepted && decision.refusal.type === 'role-not-allowed';
        expect(byRole, `${role} ${type}`).toBe(!commandRoles[type].includes(role));
      }
    }
  });

  it('keeps second line’s decisions to support, and the work on site to others', () => {
    for (const type of ['takeCase', 'askForMore', 'directStep', 'acceptCase', 'handBack'] as const) {
      expect(commandRoles[type]).toEqual(['support']);
    }
    for (const type of ticketCommandTypes) {
      const { [type]: roles } = commandRoles;
      expect(roles.includes('admin')).toBe(roles.includes('technician') || roles.includes('dispatcher'));
      if (roles.includes('dispatcher')) {
        const atTheDesk = ['note', 'amendIntake', 'answerWhatChanged', 'withdrawReport', 'reopen'];
        expect([...atTheDesk, 'waitFor', 'resumeWork', 'recordChoice', 'recordFollowUp']).toContain(type);
      }
    }
  });
});
