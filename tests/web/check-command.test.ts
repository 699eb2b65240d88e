import { describe, expect, it } from 'vitest';
import type { TicketCommand } from '../../shared/contract/commands.ts';
import { misfit } from '../../src/web/projection/check-command.ts';

describe('a step before it is kept on the phone', () => {
  it('fits where the API takes it', () => {
    expect(misfit({ type: 'note', text: 'Rang the bell twice.' })).toBeNull();
  });

  it('is refused with the field that does not fit, as the API would', () => {
    const problem = misfit({ type: 'startWatch', plannedMin: -5 } as TicketCommand);
    expect(problem).toMatchObject({ type: '/problems/invalid-input', status: 400 });
    expect(problem?.errors?.map(({ pointer }) => pointer)).toEqual(['/plannedMin']);
  });

  it('may not be one that the API does not know', () => {
    const problem = misfit({ type: 'declareFixed' } as unknown as TicketCommand);
    expect(problem?.errors?.map(({ pointer }) => pointer)).toEqual(['/type']);
  });
});
