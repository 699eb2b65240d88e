import type { Ticket } from '../shared/contract/ticket.ts';
import { expectStatus, type Session } from './session.ts';
import type { StoryClock } from './story-clock.ts';

export type Say = (who: string, what: string) => void;
type Command = { type: string } & Record<string, unknown>;
type Step = () => Promise<unknown>;

type Players = {
  ticketId: string;
  /** Minute 0 of the story. */
  start: Date;
  clock: StoryClock;
  dispatcher: Session;
  technician: Session;
  support: Session;
  say: Say;
};

/** One ticket and the people on it, with the steps that a case is told in. Minutes count from the start. */
export type Case = Players & {
  moment(minute: number): Date;
  /** Lets the story go on to that minute. */
  at(minute: number): void;
  /** The minute that it is in the story, some minutes on. */
  later(minutes: number): number;
  /** Every minute at which the fault came so far. */
  readonly cameAt: readonly number[];
  /** The technician sends a command; with `what`, it is told. */
  tell(command: Command, what?: string): Promise<Ticket>;
  watch(from: number, to: number, more: object, during: readonly Step[]): Promise<void>;
  occurrence(minute: number, more?: object): Promise<Ticket>;
  read(tie: object, reading: object): Promise<void>;
  attach(about: object, file: Blob, fileName: string): Promise<void>;
};

export function boundCase(players: Players): Case {
  const { ticketId, technician, start, clock, say } = players;
  const moment = (minute: number) => new Date(start.getTime() + minute * 60_000);
  const cameAt: number[] = [];
  const at = (minute: number) => clock.to(moment(minute));
  const later = (minutes: number) => (clock.now().getTime() - start.getTime()) / 60_000 + minutes;
  const tell = async (command: Command, what?: string) => {
    const ticket = await technician.command(ticketId, command);
    if (what !== undefined) say('technician', what);
    return ticket;
  };
  return {
    ...players,
    moment,
    at,
    later,
    cameAt,
    tell,
    watch: async (from, to, more, during) => {
      at(from);
      await tell({ type: 'startWatch', plannedMin: to - from, ...more });
      for (const step of during) await step();
      at(to);
      await tell({ type: 'endWatch' });
    },
    occurrence: (minute, more = {}) => {
      at(minute);
      cameAt.push(minute);
      return tell({ type: 'recordOccurrence', durationS: 3, ...more });
    },
    read: async (tie, reading) => {
      expectStatus(await technician.post(`/tickets/${ticketId}/readings`, { tie, reading }), 201);
    },
    attach: async (about, file, fileName) => {
      const form = new FormData();
      form.set('about', JSON.stringify(about));
      form.set('file', file, fileName);
      expectStatus(await technician.upload(`/tickets/${ticketId}/evidence`, form), 201);
    },
  };
}
