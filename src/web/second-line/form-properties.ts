import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { CaseFacts } from './case-facts.ts';

/** What a form of second line gets: the case, and how to send its command. */
export type FormProperties = {
  facts: CaseFacts;
  /** @returns whether it was accepted */
  send: (command: { type: TicketCommandType } & Record<string, unknown>) => Promise<boolean>;
  isBusy: boolean;
};
