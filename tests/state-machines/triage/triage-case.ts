import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import { type ChangeKind, triageRecord } from '../../../shared/contract/triage.ts';
import {
  allowedCommands,
  type CompleteCommand,
  type Decision,
  decide,
  type Opening,
  openTriage,
  type Refusal,
  replay,
  stateName,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import type {
  DiaryClosed,
  DiaryOpened,
  OccurrenceReported,
  ReportAnswered,
} from '../../../state-machines/triage/events.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { type Added, completeOf, link, members, opening, type Sent, uuid } from './triage-events.ts';

/** What the client's diary tells the machine. */
type DiaryNews = Unsigned<DiaryOpened | DiaryClosed | OccurrenceReported | ReportAnswered>;
type Unsigned<Event> = Event extends unknown ? Omit<Event, 'at' | 'by' | 'role'> : never;

/** One ticket in a test: time passes by `wait`, commands go in by `send`, and what is refused by `refused`. */
export class TriageCase {
  snapshot: TriageSnapshot;
  readonly log: TriageEvent[] = [];
  #now: number;
  #ids = 100;
  readonly #opening: Opening;
  readonly #chain: Chain;

  constructor(facts: { chain?: Chain; opening?: Partial<Opening> } = {}) {
    this.#opening = { ...opening, ...facts.opening };
    this.#chain = facts.chain ?? homeCinema();
    this.#now = Date.parse(this.#opening.at);
    this.snapshot = openTriage(this.#opening);
  }

  get state(): string {
    return stateName(this.snapshot);
  }
  get record() {
    return this.snapshot.context;
  }
  get now(): string {
    return new Date(this.#now).toISOString();
  }
  /** UTC, ISO 8601, this many minutes from now. */
  minutesFromNow(minutes: number): string {
    return new Date(this.#now + minutes * 60_000).toISOString();
  }
  newId = (): string => uuid(this.#ids++);
  allowed(role: MemberRole = 'technician'): string[] {
    return allowedCommands(this.snapshot, role, this.now).map(({ type }) => type);
  }

  wait(minutes: number): this {
    this.#now += minutes * 60_000;
    return this;
  }

  /** Sends commands, each of which has to be accepted. */
  send(...commands: Sent[]): this {
    for (const command of commands) this.sendWith({}, command);
    return this;
  }

  sendWith(added: Added, command: Sent): this {
    const decision = decide(this.snapshot, this.complete(command, added));
    if (!decision.accepted)
      throw new Error(`${command.type} in ${this.state}: ${decision.refusal.said.code}`);
    return this.#take(decision);
  }

  /** Sends a command that may be refused. */
  attempt(command: Sent): this {
    const decision = decide(this.snapshot, this.complete(command));
    return decision.accepted ? this.#take(decision) : this;
  }

  /** Sends a command that has to be refused; the snapshot has to stay what it is. */
  refused(command: Sent, added: Added = {}): Refusal {
    const before = JSON.stringify(this.snapshot);
    const decision = decide(this.snapshot, this.complete(command, added));
    if (JSON.stringify(this.snapshot) !== before) throw new Error(`${command.type} changed the snapshot`);
    if (decision.accepted) throw new Error(`${command.type} was accepted in ${this.state}`);
    return decision.refusal;
  }

  /** Evidence as the store reports it. */
  addEvidence(item: Partial<Omit<EvidenceRef, 'tie'>> & { tie?: Partial<EvidenceRef['tie']> }): string {
    const { tie, ...facts } = item;
    const noTie = { deviceId: null, portId: null, linkId: null, watchId: null, changeId: null, shows: null };
    const evidence: EvidenceRef = {
      id: this.newId(),
      kind: 'photo',
      sha256: null,
      span: null,
      reading: null,
      at: this.now,
      by: members.technician,
      withdrawn: null,
      ...facts,
      tie: { ...noTie, ...tie },
    };
    this.#takeFact({ type: 'evidenceAdded', evidence, ...this.#byTechnician() });
    return evidence.id;
  }

  withdrawEvidence(evidenceId: string, reason: string): this {
    return this.#takeFact({ type: 'evidenceWithdrawn', evidenceId, reason, ...this.#byTechnician() });
  }

  /** A client's diary, opened for so many days. */
  openDiary(days = 21): string {
    const diaryId = this.newId();
    const until = new Date(Date.parse(this.now) + days * 86_400_000).toISOString();
    this.bring({ type: 'diaryOpened', diaryId, until });
    return diaryId;
  }

  /** News of a diary, such as what the client reports by it. */
  bring(news: DiaryNews): this {
    return this.#takeFact({ ...news, ...this.#byTechnician() } as CompleteCommand);
  }

  /** A report of the client by a diary: that it came so many minutes ago. */
  report(diaryId: string, agoMin = 0): string {
    const reportId = this.newId();
    const occurredAt = new Date(Date.parse(this.now) - agoMin * 60_000).toISOString();
    this.bring({ type: 'occurrenceReported', reportId, diaryId, occurredAt });
    return reportId;
  }

  /** What replay of the log leads to. */
  replayed(): TriageSnapshot {
    return replay(this.#opening, JSON.parse(JSON.stringify(this.log)));
  }

  /** A command as it would be put to the machine now. */
  complete(command: Sent, added: Added = {}): CompleteCommand {
    return completeOf(command, { at: this.now, newId: this.newId, chain: this.#chain, ...added });
  }

  #byTechnician() {
    return { at: this.now, by: members.technician, role: 'technician' as const };
  }

  #takeFact(news: CompleteCommand): this {
    const decision = decide(this.snapshot, news);
    if (!decision.accepted) throw new Error(decision.refusal.said.code);
    return this.#take(decision);
  }

  #take({ events, snapshot }: Extract<Decision, { accepted: true }>): this {
    // A snapshot is stored as JSON and read back between any two commands.
    this.snapshot = JSON.parse(JSON.stringify(snapshot));
    triageRecord.parse(this.snapshot.context);
    this.log.push(...events);
    return this;
  }

  // The stages of an ordinary ticket, for tests that begin further on.

  baseline(): this {
    return this.send(
      { type: 'reviewAudit', chainVersion: 3 },
      { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] },
      { type: 'recordAsFound', chainVersion: 3 },
    );
  }

  /** Watches so many minutes, in which the fault comes this often. */
  watch(
    minutes: number,
    occurrences: number,
    facts: Partial<Extract<Sent, { type: 'startWatch' }>> = {},
  ): this {
    this.send({ type: 'startWatch', ...facts });
    for (let at = 1; at <= occurrences; at += 1) {
      this.wait(minutes / (occurrences + 1)).send({ type: 'recordOccurrence' });
    }
    return this.wait(minutes / (occurrences + 1)).send({ type: 'endWatch' });
  }

  /** Makes tries of one trigger, of which the first ones fail. */
  tries(good: number, failed: number, trigger = 'Switch the source'): this {
    this.send({ type: 'startWatch', mode: 'trigger', trigger });
    for (let at = 0; at < failed; at += 1) this.wait(1).send({ type: 'recordOccurrence' });
    for (let at = 0; at < good; at += 1) this.wait(1).send({ type: 'recordTry' });
    return this.send({ type: 'endWatch' });
  }

  /** Six occurrences in an hour, then on to finding the side. */
  reproduced(): this {
    return this.baseline().watch(60, 6).send({ type: 'acceptReproduction' });
  }

  /** Sees the fault with a menu up. */
  menuWatch(deviceId: string, ...answers: ('stayed' | 'vanished')[]): this {
    this.send({ type: 'startWatch', menuDeviceId: deviceId });
    for (const menu of answers) this.wait(5).send({ type: 'recordOccurrence', menu });
    return this.wait(5).send({ type: 'endWatch' });
  }

  side(deviceId: string, menu: 'stayed' | 'vanished'): this {
    return this.menuWatch(deviceId, menu).send({ type: 'concludeSide', deviceId });
  }

  /** Ready to change something upstream of the processor. */
  substituting(deviceId = 'processor', menu: 'stayed' | 'vanished' = 'stayed'): this {
    return this.reproduced().side(deviceId, menu).send({ type: 'beginSubstitution' });
  }

  declare(
    kind: ChangeKind,
    target: Place,
    facts: Partial<Extract<Sent, { type: 'declareChange' }>> = {},
  ): this {
    const expected = 'The drop-outs stay away';
    return this.send({ type: 'declareChange', kind, target, expected, ...facts });
  }

  /** Declares, makes and retests one change: quiet long enough to count as cleared, or with the fault. */
  tried(kind: ChangeKind, target: Place, result: 'cleared' | 'persists'): this {
    return this.declare(kind, target)
      .send({ type: 'applyChange' })
      .watch(60, result === 'cleared' ? 0 : 4)
      .send({ type: 'judgeRetest' });
  }

  /** The change that was declared last. */
  get lastChange() {
    const change = this.record.changes.at(-1);
    if (change === undefined) throw new Error('no change was declared');
    return change;
  }
  get lastWatch() {
    const watch = this.record.watches.at(-1);
    if (watch === undefined) throw new Error('nothing was watched');
    return watch;
  }

  /** A cable was shown to be the cause, the change put back, and the fault seen again. */
  culpritNamed(): this {
    this.substituting()
      .tried('replaceCable', link('L3'), 'cleared')
      .send({ type: 'restoreChange' })
      .watch(20, 1);
    return this.send({
      type: 'nameCulprit',
      changeId: this.lastChange.id,
      place: link('L3'),
      explanation: 'The cable drops out at the full rate',
      confirmation: { kind: 'returned', watchId: this.lastWatch.id },
    });
  }

  repaired(): this {
    return this.culpritNamed().send(
      { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'A certified cable in its place' } },
      { type: 'finishRemedy', asLeftChainVersion: 4 },
    );
  }

  closed(): this {
    return this.repaired().watch(60, 0).send({ type: 'close' });
  }
}
