import { describe, expect, it } from 'vitest';
import { answerTo } from '../../src/web/store/upload-answer.ts';

const problem = (type: string) => JSON.stringify({ type, status: 409, detail: '' });

describe('an upload that did not get through', () => {
  it('goes on by itself without a connection, without a turn, and where its parts got out of step', () => {
    for (const status of [0, 401, 423, 429, 500, 503]) expect(answerTo(status, '')).toBe('comesAgain');
    expect(answerTo(409, 'Upload-Offset conflict')).toBe('comesAgain');
    expect(answerTo(409, problem('about:blank'))).toBe('comesAgain');
  });

  it('is refused for good where the API names what is against it, such as a ticket that is closed', () => {
    expect(answerTo(409, problem('/problems/not-allowed-now'))).toBe('refused');
    expect(answerTo(415, problem('/problems/type-not-allowed'))).toBe('refused');
    expect(answerTo(410, '')).toBe('refused');
  });
});
