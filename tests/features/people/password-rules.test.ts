import { describe, expect, it } from 'vitest';
import { weaknessOf } from '../../../src/features/people/password-rules.ts';

const names = ['Oda Fennick', 'oda.fennick', 'lanternrow', 'Lantern Row AV'];

describe('a new password', () => {
  it.each([
    ['passwordRepeats', 'aaaaaaaaaaaa'],
    ['passwordRepeats', 'ababababababab'],
    // From memory: among the first of published lists of leaked passwords, in lengths that the contract takes.
    ['passwordMostUsed', '1234567890'],
    ['passwordMostUsed', 'Password123!'],
    ['passwordMostUsed', 'QWERTYUIOP'],
    ['passwordMostUsed', 'iloveyou2026'],
    ['passwordIsName', 'LanternRow2026'],
    ['passwordIsName', 'fennick-oda-77!'],
    ['passwordIsName', 'Lantern Row AV'],
  ])('is refused as %s: %s', (code, password) => {
    expect(weaknessOf(password, names)?.code).toBe(code);
  });

  it.each(['a password for tests', 'lantern light on wet slate', 'x7Kp2mQ9vLr4', 'ganz egal was hier steht'])(
    'may be %s',
    (password) => {
      expect(weaknessOf(password, names)).toBeNull();
    },
  );
});
