import type { AllowedCommand } from '../../../shared/contract/problem.ts';
import type { MissingItem } from '../../../shared/contract/triage.ts';
import { type Message, storedMessage } from '../../../shared/message/index.ts';

// What a ticket says beside its record, where it is kept: version 1 kept sentences.

type Sentences<Said, Key extends keyof Said> = Omit<Said, Key> & { [Name in Key]: string | Message };

/** What a case lacks, as a packet or a phone kept it, as today's. */
export const missingAsToday = (stored: Sentences<MissingItem, 'text'>): MissingItem => ({
  ...stored,
  text: storedMessage(stored.text),
});

/** A command that could be sent, as a phone kept it, as today's. */
export const allowedAsToday = (stored: Sentences<AllowedCommand, 'label'>): AllowedCommand => ({
  ...stored,
  label: storedMessage(stored.label),
});
