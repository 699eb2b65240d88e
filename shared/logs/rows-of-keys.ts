import type { RecognitionRow } from './recognition-row.ts';
import { bad, begun, good, noError, notYet, otherTopics, words } from './recognition-words.ts';

/** Steps and parts of content protection by HDCP's own names (HDCP 1.4 and 2.3, public specifications; from memory). */
const steps = words(
  'ake*, ske*, lc init, locality check, locality, r0*, ri, bksv, aksv, h prime, l prime, pairing info, receiver certificate, cert rx, integrity check, link integrity, session key exchange, key exchange, content key',
);
const named = words('content protection, copy protection, hdcp*');
const contentProtection = [
  ...named,
  ...steps,
  ...words('authentication, authenticated, unauthenticated, encryption, cipher*, key agreement'),
];
/** People and computers authenticate too. */
const signIn = words('password, login, user, ssh*, root, pam, web, wifi, wpa, tls, su, guest, account');
const repeater = words(
  'repeater, ksv list, ksv fifo, ksv, receiver id list, receiverid, receiverid list, receiverids, topology, cascade, v prime, v does not match, v mismatch, v differs, max devices, max cascade, devices exceeded, downstream topology, downstream cascade, repeaterauth*, device list, list of receivers, receivers list, behind repeater, levels deep',
);
/** Rows on content protection. */
export const rowsOfKeys: readonly RecognitionRow[] = [
  {
    kind: 'repeaterFailed',
    all: [repeater, bad],
    none: noError,
    unlessOurs: otherTopics,
    example: 'tx0: repeater authentication failed, topology timeout',
    note: 'The list of what lies behind a repeater could not be had, or is too long: points at or behind that repeater.',
  },
  {
    kind: 'authenticationFailed',
    all: [contentProtection],
    turn: 'off',
    none: signIn,
    unlessOurs: otherTopics,
    example: 'tx0: HDCP state AUTH -> UNAUTH',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'authenticationDone',
    all: [contentProtection],
    turn: 'on',
    none: signIn,
    unlessOurs: otherTopics,
    example: 'tx0: HDCP state UNAUTH -> AUTH',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'authenticationFailed',
    all: [contentProtection, bad],
    none: [...signIn, ...noError],
    unlessOurs: otherTopics,
    example: 'tx0: content protection authentication failed',
    note: 'Content protection between two neighbours didn’t come about, or broke.',
  },
  {
    kind: 'authenticationDone',
    all: [[...contentProtection, 'repeater'], good],
    none: [...signIn, ...notYet, ...bad, 'poll*'],
    unlessOurs: otherTopics,
    example: 'tx0: content protection authenticated',
    note: 'Content protection is up.',
  },
  {
    kind: 'authenticationStarted',
    all: [contentProtection, [...begun, 'attempt*', 'enter*']],
    none: signIn,
    unlessOurs: otherTopics,
    example: 'tx0: content protection: starting authentication',
    note: 'Each new start counts.',
  },
];
