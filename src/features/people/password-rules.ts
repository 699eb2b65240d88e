import { dictionary } from '@zxcvbn-ts/language-common';
import { type Message, message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';

/** The passwords that are used most, from leaks, as the package's makers gathered them; all in lower case. */
const mostUsed = new Set(dictionary['passwords-common']);
/** Assumed: what has to be left of a password when names and numbers are taken off it. */
const leastOwn = 6;

/**
 * Why a new password is too easy to guess: null where it isn't. It may be anything else that is long enough, which the
 * contract sees to (NIST SP 800-63B-4, section 3.1.1.2: no rules of composition, but a list of what is used most, and of
 * words that the place suggests).
 * @param names whose or what's: the member's, their address, the organisation's
 */
export function weaknessOf(password: string, names: readonly string[]): Message | null {
  const plain = password.toLowerCase();
  if (new Set(plain).size <= 2) return message('passwordRepeats');
  if (mostUsed.has(plain) || mostUsed.has(withoutTail(plain))) return message('passwordMostUsed');
  const own = names
    .flatMap((name) => [name, ...name.split(/[^\p{L}\p{N}]+/u)])
    .map(lettersOf)
    .filter(({ length }) => length >= 3)
    .toSorted((a, b) => b.length - a.length);
  const left = own
    .reduce((rest, name) => rest.replaceAll(name, ''), lettersOf(plain))
    .replaceAll(/\p{N}/gu, '');
  return own.some((name) => lettersOf(plain).includes(name)) && left.length < leastOwn
    ? message('passwordIsName')
    : null;
}

/** Says at the field of a request why its new password won't do. */
export function weakPassword(password: string, names: readonly string[]): Refused | null {
  const weakness = weaknessOf(password, names);
  if (weakness === null) return null;
  return refused('invalid-input', message('fieldsDoNotFit'), {
    errors: [{ pointer: '/password', ...weakness }],
  });
}

/** What people hang on at the end when a word alone is refused. */
const withoutTail = (password: string): string => password.replace(/[^\p{L}]+$/u, '');
const lettersOf = (text: string): string => text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
