import type { Chain, Place } from '../../../shared/contract/chain.ts';
import { witnessAnswers } from '../../../shared/contract/look-names.ts';
import type { ChangeKind } from '../../../shared/contract/triage.ts';
import {
  actingParties,
  changeKinds,
  patternTriggers,
  symptomKinds,
  waitingKinds,
} from '../../../shared/contract/triage-names.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { applicableChanges } from '../../../state-machines/index.ts';
import { everyPlace } from '../../../state-machines/triage/changes/places.ts';
import { oneOf } from '../../support/house/faults.ts';
import type { Sent as Command } from '../../support/technician.ts';
import { commandOf } from './any-commands.ts';
import { members, uuid, waiveAll } from './triage-events.ts';
import { wishesForAnswers } from './walk-chances.ts';
import type { WalkedTicket } from './walked-ticket.ts';

/** What others do meanwhile, or the technician thinks better of: never offered, and taken where it is allowed. */
const interrupting = [
  'voidWatch',
  'withdrawOccurrence',
  'correctOccurrence',
  'withdrawSide',
  'withdrawChange',
  'withdrawCulprit',
  'withdrawRemedy',
  'withdrawLook',
  'withdrawReport',
  'locateSideAgain',
  'answerWhatChanged',
  'enterLateChange',
  'waitFor',
  'note',
] as const;
const technicians = [members.technician, members.admin, uuid(0x77)];

/** So often somebody tries to do something else, where what they wanted is refused. */
const mostAttempts = 5;

/** Something that nobody planned for; says what it was. */
export function interrupt(ticket: WalkedTicket, random: () => number): string {
  for (let attempt = 0; attempt < mostAttempts; attempt += 1) {
    const what = attemptTo(ticket, random);
    if (what !== null) return what;
  }
  return 'nothing that would be taken';
}

/** What few walks meet by chance, since somebody does it unasked at the one moment at which it is taken. */
const wishes = [
  'withdrawSide',
  'withdrawCulprit',
  'withdrawReport',
  'enterLateChange',
  'answerLogged',
  'recordLook',
  'waitFor',
  'recall',
  'recordFollowUp',
] as const;
export type Wish = (typeof wishes)[number];
const withAnswers: ReadonlySet<Wish> = new Set(['recordFollowUp', 'waitFor']);

export function anyWish(random: () => number): Wish {
  const often = wishes.flatMap((wish) =>
    Array<Wish>(withAnswers.has(wish) ? wishesForAnswers : 1).fill(wish),
  );
  return oneOf(often, random);
}

/** Does what a walk wants to see, where it is taken; says what it was, null where it was refused. */
export function grant(ticket: WalkedTicket, wish: Wish, random: () => number): string | null {
  switch (wish) {
    case 'recordLook':
      return sent(ticket, { type: 'recordLook', what: lookUnasked(ticket, random) });
    case 'answerLogged':
      return logAnsweredNo(ticket, random);
    case 'withdrawReport':
      if (ticket.record.reports.length === 0) {
        ticket.openDiary(30);
        ticket.report(null);
      }
      return anyOf(ticket, wish, random);
    case 'waitFor':
      return sent(ticket, waitUnasked(random));
    // Second line's part of the walk, and a closed ticket's, do these themselves.
    case 'recall':
    case 'recordFollowUp':
      return null;
    default:
      return anyOf(ticket, wish, random);
  }
}

/** A wait for anything, on anybody: what the plan waits for is little of what there is to wait for. */
const waitUnasked = (random: () => number): Command => ({
  type: 'waitFor',
  kind: oneOf(waitingKinds, random),
  what: 'What it takes',
  actor: oneOf(actingParties, random),
  until: '2199-01-01T08:00:00.000Z',
});

function anyOf(ticket: WalkedTicket, type: Parameters<typeof commandOf>[0][number], random: () => number) {
  const picks = { what: 0, which: Math.floor(random() * 1000), minutes: 0, offline: false };
  return sent(ticket, commandOf([type], picks, ticket.snapshot) as Command);
}

/** What was done; null where it was refused. */
function attemptTo(ticket: WalkedTicket, random: () => number): string | null {
  const which = Math.floor(random() * (interrupting.length + others.length));
  const other = others[which - interrupting.length];
  if (other !== undefined) return other(ticket, random);
  return anyOf(ticket, interrupting[which] ?? 'note', random);
}

const others: readonly ((ticket: WalkedTicket, random: () => number) => string | null)[] = [
  (ticket) => sent(ticket, { type: 'escalate', question: 'What is it?', waivers: waiveAll }),
  (ticket, random) => {
    ticket.technician = oneOf(technicians, random);
    return 'another technician';
  },
  (ticket, random) => occurrenceByLog(ticket, random),
  (ticket, random) => {
    ticket.openDiary(1 + Math.floor(random() * 30));
    ticket.report(null);
    return 'a diary for the client, and a report by it';
  },
  (ticket, random) => sent(ticket, { type: 'amendIntake', symptom: toldAnew(ticket, random) }),
  (ticket, random) => sent(ticket, { type: 'recordLook', what: lookUnasked(ticket, random) }),
];

/** What somebody reads who was not asked to: a setting, a page while all is well, or what another device shows. */
function lookUnasked({ record: { asFound } }: WalkedTicket, random: () => number) {
  const devices = asFound?.chain.devices ?? [];
  const deviceId = devices.length === 0 ? 'd1' : oneOf(devices, random).id;
  const witnesses = devices
    .filter(({ role }) => role === 'source' || role === 'display')
    .flatMap((one) =>
      devices.filter((other) => other !== one && other.role === one.role).map((other) => [one, other]),
    )
    .map(([one, other]) => ({ kind: 'witness', deviceId: one?.id, besideId: other?.id }));
  const looks: object[] = [
    { kind: 'setting', deviceId, key: 'Input signal format', value: 'standard', shouldBe: 'enhanced' },
    { kind: 'setting', deviceId, key: 'Input signal format', value: 'standard', shouldBe: null },
    { kind: 'signal', deviceId, moment: 'good', said: { kind: 'read', receives: null, sends: null } },
  ];
  return witnesses.length > 0 && random() < 0.4
    ? { ...oneOf(witnesses, random), answer: oneOf(witnessAnswers, random) }
    : oneOf(looks, random);
}

/** The client tells it otherwise than before. */
function toldAnew({ record: { symptom } }: WalkedTicket, random: () => number) {
  const kind = oneOf(symptomKinds, random);
  const perHour = random() < 0.5 ? symptom.perHour : 1 + Math.floor(random() * 9);
  const pattern = oneOf(
    [
      symptom.pattern,
      { kind: 'always' },
      { kind: 'trigger', trigger: oneOf(patternTriggers, random) },
      { kind: 'random', rarely: random() < 0.5 },
      { kind: 'notKnown' },
    ],
    random,
  );
  return { ...symptom, kind, perHour, pattern };
}

/** Where a kind of change can be made at all on a chain; anywhere, where it is not said to what. */
function anyTarget(chain: Chain, kind: ChangeKind, random: () => number): Place {
  const places = everyPlace(chain, changeCatalogue[kind].target);
  return places.length > 0 ? oneOf(places, random) : { kind: 'link', linkId: oneOf(chain.links, random).id };
}

/**
 * The technician makes a change of their own choice, the wanted kind of it where that applies here.
 *
 * @returns what it was; null where no change applies
 */
export function changeByHand(ticket: WalkedTicket, wanted: ChangeKind, random: () => number): string | null {
  const chain = ticket.record.asFound?.chain;
  const all = applicableChanges(ticket.snapshot, { ownChanges: ticket.ownChanges });
  const ofKind = all.filter(({ kind }) => kind === wanted);
  const change = ofKind.length > 0 ? oneOf(ofKind, random) : null;
  const words = { detail: '', expected: 'It stays away', mayStay: random() < 0.5 };
  if (wanted === 'otherChange' && chain !== undefined) {
    const target = anyTarget(chain, wanted, random);
    const detail = 'The shelf was moved';
    return sent(ticket, { type: 'declareChange', kind: wanted, target, ...words, detail });
  }
  if (change === null) return null;
  const { kind, target, own } = change;
  return sent(ticket, { type: 'declareChange', kind, target, ownKindId: own?.id ?? null, ...words });
}

/** The type of what was sent; null where it was refused. */
const sent = (ticket: WalkedTicket, command: Command): string | null =>
  ticket.send(command) === null ? command.type : null;

/** A log shows an occurrence that nobody saw, in a watch that has ended. */
function occurrenceByLog(ticket: WalkedTicket, random: () => number): string | null {
  const logged = loggedMoment(ticket, random);
  if (logged === null) return null;
  const { purpose, ...moment } = logged;
  const menu = purpose === 'side' ? oneOf(['stayed', 'vanished'] as const, random) : null;
  return sent(ticket, { type: 'confirmOccurrence', ...moment, menu });
}

/** Whoever was there says that what a log shows was not the fault. */
function logAnsweredNo(ticket: WalkedTicket, random: () => number): string | null {
  const logged = loggedMoment(ticket, random);
  if (logged === null) return null;
  const { purpose: _, ...moment } = logged;
  return sent(ticket, { type: 'answerLogged', ...moment, answer: 'no' });
}

/** A moment in a watch that has ended, and a log of it; null where none has. */
function loggedMoment(ticket: WalkedTicket, random: () => number) {
  const ended = ticket.record.watches.filter(({ endedAt }) => endedAt !== null);
  if (ended.length === 0) return null;
  const { id, startedAt, endedAt, purpose } = oneOf(ended, random);
  const [from, to] = [Date.parse(startedAt), Date.parse(endedAt ?? startedAt)];
  const occurredAt = new Date(from + Math.floor((to - from) * random())).toISOString();
  return { watchId: id, occurredAt, evidenceId: ticket.addLog(), purpose };
}

/** What second line may do with a case that it has taken. */
export function answerOfSecondLine(chain: Chain, random: () => number): Command {
  const place: Place = { kind: 'link', linkId: oneOf(chain.links, random).id };
  const kind = oneOf(changeKinds, random);
  const change = { kind, target: anyTarget(chain, kind, random) };
  const answers: Command[] = [
    { type: 'directStep', text: 'Read the EDID' },
    { type: 'directStep', text: 'Do this', change },
    { type: 'handBack', reason: 'Watch for longer first' },
    { type: 'askForMore', requests: [{ text: 'The EDID' }, { text: 'A photo' }] },
    { type: 'acceptCase', finding: 'A known fault', place: random() < 0.5 ? place : null },
  ];
  return oneOf(answers, random);
}
