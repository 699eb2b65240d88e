import type { TicketCommandType } from '../../../shared/contract/commands.ts';

/** What a ticket asks for next apart from choosing a test. */
export type Step = {
  sentence: string;
  commands: TicketCommandType[];
  /** Minutes still to be watched; null where the step isn't watching. */
  watchMin: number | null;
};

export const step = (
  sentence: string,
  commands: TicketCommandType[],
  watchMin: number | null = null,
): Step => ({
  sentence,
  commands,
  watchMin,
});
