import { completeness, describeEvent } from '../../state-machines/index.ts';
import { applicableChangesOf } from '../../state-machines/triage/changes/applicable.ts';
import { judgeWatches } from '../../state-machines/triage/retest.ts';
import { randomFrom } from '../bench/isolation-world.ts';
import { homeCinema, withLink, withPort } from '../chain/build-chain.ts';
import { commandOf } from '../state-machines/triage/any-commands.ts';
import { TriageCase } from '../state-machines/triage/triage-case.ts';
import { type Added, device, link, type Sent, waiveAll } from '../state-machines/triage/triage-events.ts';

/** With something for every caution: a cable in the wall, one in conduit, and a port set too low. */
const chain = withPort(
  withLink(withLink(homeCinema(), 'L4', { route: 'inWall' }), 'L3', { route: 'inConduit' }),
  'receiver',
  'in1',
  { setMode: { kind: 'tmds', maxCharacterRateMHz: 300 } },
);

/** A ticket that remembers whatever was said of it, at every point of its way. */
class SpokenCase extends TriageCase {
  readonly said: Set<string>;
  constructor(said: Set<string>, facts: ConstructorParameters<typeof TriageCase>[0] = {}) {
    super({ chain, ...facts });
    this.said = said;
  }
  override sendWith(...sent: Parameters<TriageCase['sendWith']>): this {
    return super.sendWith(...sent).listen();
  }
  listen(): this {
    for (const text of saidNow(this)) this.said.add(text);
    return this;
  }
}

function saidNow(ticket: TriageCase): string[] {
  const { record } = ticket;
  return [
    ...completeness(record).map(({ text }) => text),
    ...record.changes.flatMap(({ judgement }) => [
      ...(judgement?.reasons ?? []),
      ...(judgement?.warnings ?? []),
    ]),
    ...judgeWatches(record, record.watches).reasons,
  ];
}

const question = { type: 'escalate', question: 'Ist es der Receiver?', waivers: waiveAll } as const;
const repair = { kind: 'permanent', what: 'Neues Kabel' } as const;

/** Each a way through a ticket, with what can be said of it on the way. */
const ways: readonly ((said: Set<string>) => void)[] = [
  (said) => {
    const ticket = new SpokenCase(said).listen();
    ticket.send({ type: 'reviewAudit', chainVersion: 3 });
    ticket.send({ type: 'answerWhatChanged', answers: [{ kind: 'cable' }, { kind: 'move' }] });
    ticket.send({ type: 'recordAsFound', chainVersion: 3 }, { type: 'startWatch' });
    ticket.wait(10).send({ type: 'recordOccurrence' });
    ticket.wait(15).send({ type: 'recordOccurrence' }, { type: 'endWatch' });
    ticket.wait(600).send({ type: 'acceptReproduction' });
  },
  (said) => {
    const unknownRate = { symptom: { kind: 'noPicture', perHour: null, lastsS: null } } as const;
    const ticket = new SpokenCase(said, { opening: unknownRate }).baseline().watch(500, 0);
    ticket.send({ type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'Lange beobachtet' } });
  },
  (said) => {
    const ticket = new SpokenCase(said).baseline().tries(2, 3).send({ type: 'acceptReproduction' });
    ticket.side('processor', 'stayed').send({ type: 'beginSubstitution' });
    ticket.declare('replaceCable', link('L3')).send({ type: 'applyChange' }).tries(3, 0);
    ticket.tries(4, 1).send({ type: 'judgeRetest' }, { type: 'restoreChange' });
    ticket.declare('bypassDevice', device('receiver')).send({ type: 'applyChange' });
    ticket.watch(30, 0).tries(3, 0, 'Something else').send({ type: 'judgeRetest' });
  },
  (said) => {
    const ticket = new SpokenCase(said).reproduced();
    ticket.send({ type: 'startWatch', menuDeviceId: 'processor' });
    ticket.wait(5).send({ type: 'recordOccurrence', menu: 'stayed' }, { type: 'endWatch' });
    ticket.send({ type: 'concludeSide', deviceId: 'processor' });
    ticket.menuWatch('receiver', 'vanished').send({ type: 'concludeSide', deviceId: 'receiver' });
    ticket.send({ type: 'beginSubstitution' });
    ticket.tried('reseat', link('L3'), 'persists').send({ type: 'restoreChange' });
    ticket.declare('replaceCable', link('L3')).send({ type: 'applyChange' });
    ticket.watch(4, 0).send({ type: 'judgeRetest' }).watch(60, 0).send({ type: 'judgeRetest' });
    ticket.send({ type: 'restoreChange' }, { type: 'startWatch' }).wait(10);
    ticket.send({ type: 'recordOccurrence' }, { type: 'endWatch' });
  },
  (said) => {
    const ticket = new SpokenCase(said).culpritNamed();
    ticket.send({ type: 'chooseRemedy', remedy: repair });
    ticket.send({ type: 'finishRemedy', asLeftChainVersion: 4 }).watch(5, 0).watch(70, 0);
    ticket.send({ type: 'close' });
  },
  (said) => {
    const ticket = new SpokenCase(said).repaired().watch(20, 1);
    ticket.send({ type: 'faultCameBack', reason: 'Er kam wieder' });
  },
  (said) => {
    const ticket = new SpokenCase(said).reproduced().send(question, { type: 'takeCase' });
    ticket.send({ type: 'askForMore', requests: [{ text: 'Welche Firmware?' }] });
    const [asked] = ticket.record.requests;
    ticket.send({ type: 'answerRequest', requestId: asked?.id ?? '', text: 'Die dritte' });
  },
  (said) => {
    const ticket = new SpokenCase(said).substituting();
    for (const [kind, target] of [
      ['disableProcessing', device('processor')],
      ['reissueHotPlug', device('processor')],
    ] as const) {
      if (!applicableChangesOf(ticket.record).some((each) => each.kind === kind)) continue;
      ticket.declare(kind, target).send({ type: 'applyChange' }).watch(20, 12).send({ type: 'judgeRetest' });
      ticket.send({ type: 'restoreChange' });
    }
  },
  (said) => {
    const ticket = new SpokenCase(said).reproduced();
    for (const deviceId of ['player', 'receiver', 'processor'])
      ticket.menuWatch(deviceId, 'vanished').send({ type: 'concludeSide', deviceId });
    ticket.menuWatch('projector', 'stayed').send({ type: 'concludeSide', deviceId: 'projector' });
    ticket.send({ type: 'beginSubstitution' });
  },
  (said) => {
    const ticket = new SpokenCase(said).reproduced().side('processor', 'stayed');
    ticket.menuWatch('processor', 'vanished');
  },
];

/** What the machine says to commands at random, of which it refuses most. @param walks each a ticket of its own */
export function saidInRefusal(walks: number, steps: number): Set<string> {
  const said = new Set<string>();
  const random = randomFrom(4711);
  const below = (limit: number) => Math.floor(random() * limit);
  for (let walk = 0; walk < walks; walk += 1) {
    const ticket = stages[walk % stages.length]?.() ?? new TriageCase({ chain });
    for (let step = 0; step < steps; step += 1) {
      const picks = { what: below(1000), which: below(1000), minutes: 0, offline: false };
      const allowed = random() < 0.4 ? ticket.allowed() : [];
      const command = commandOf(allowed as Sent['type'][], picks, ticket.snapshot);
      const why = whyRefused(ticket.wait(below(40)), command, random() < 0.1 ? { role: 'dispatcher' } : {});
      if (why !== null) said.add(why);
    }
  }
  return said;
}

function whyRefused(ticket: TriageCase, command: Sent, added: Added): string | null {
  try {
    ticket.sendWith(added, command);
    return null;
  } catch (error) {
    const [head = '', ...detail] = error instanceof Error ? error.message.split(': ') : [];
    return head.startsWith(`${command.type} in `) ? detail.join(': ') : null;
  }
}

const stages = [
  () => new TriageCase({ chain }),
  () => new TriageCase({ chain }).reproduced(),
  () => new TriageCase({ chain }).substituting(),
  () => new TriageCase({ chain }).substituting('receiver', 'vanished'),
  () => new TriageCase({ chain }).culpritNamed(),
  () => new TriageCase({ chain }).repaired(),
  () => new TriageCase({ chain }).closed(),
];

/** All that is said of tickets that go through every stage, by several ways. */
export function saidOfTickets(): Set<string> {
  const said = new Set<string>();
  for (const way of ways) way(said);
  return said;
}

/** What the time line says of tickets that go different ways. */
export function saidInTimelines(): Set<string> {
  const said = new Set<string>();
  const logged = (ticket: TriageCase) => {
    for (const event of ticket.log) said.add(describeEvent(event, ticket.record));
  };
  const asked = new TriageCase({ chain }).substituting().send(question, { type: 'takeCase' });
  asked.send({ type: 'directStep', text: 'Lies das EDID' });
  asked.addEvidence({ kind: 'photo', tie: { linkId: 'L3', shows: 'label' } });
  asked.send({ type: 'amendIntake', symptom: { kind: 'sparkles', perHour: 2 } });
  const recalled = new TriageCase({ chain })
    .baseline()
    .tries(1, 2)
    .send({ ...question });
  recalled.send({ type: 'recall', reason: 'Geht hier weiter' }, { type: 'note', text: 'Wort' });
  const back = new TriageCase({ chain }).closed().send({ type: 'reopen', reason: 'Kam wieder' });
  for (const ticket of [asked, recalled, back]) logged(ticket);
  return said;
}
