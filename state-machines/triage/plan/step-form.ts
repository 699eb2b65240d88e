import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { Message } from '../../../shared/contract/message.ts';

/** What a ticket asks for next apart from choosing a test. */
export type Step = {
  sentence: Message;
  commands: TicketCommandType[];
  /** Minutes still to be watched; null where the step isn't watching. */
  watchMin: number | null;
};

export const step = (
  sentence: Message,
  commands: TicketCommandType[],
  watchMin: number | null = null,
): Step => ({
  sentence,
  commands,
  watchMin,
});
