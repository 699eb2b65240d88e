import { describe, expect, it } from 'vitest';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import { commandAsToday } from '../../../state-machines/triage/versions/command.ts';
import { opening } from './triage-events.ts';

describe('a command that a phone kept under version 1', () => {
  it('says lost HDR where that version did not tell it from a wrong colour, and no pattern', () => {
    const symptom = { kind: 'noHdrOrWrongColour', content: 'any', perHour: null, lastsS: null };
    const kept = { type: 'amendIntake', symptom, reason: 'The client says more' } as unknown as TicketCommand;
    expect(commandAsToday(kept)).toMatchObject({
      symptom: { kind: 'noHdr', pattern: { kind: 'notKnown' }, onlyWith: null },
    });
  });

  it('is left as it is where today’s client wrote it', () => {
    const kept = { type: 'amendIntake', symptom: opening.symptom, reason: 'As told' } as TicketCommand;
    expect(commandAsToday(kept)).toEqual(kept);
  });
});
