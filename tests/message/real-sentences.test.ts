import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { auditChain } from '../../shared/audit/chain-audit.ts';
import { chainFaults } from '../../shared/chain/validate.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import { german } from '../../shared/message/de/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { type Message, messageText } from '../../shared/message/index.ts';
import { arbitraryChain } from '../chain/arbitrary-chain.ts';

// With values as chains give them: that every code has a sentence for any value is in sentences.test.ts.

const isSentence = (text: string): boolean =>
  /^\p{Lu}.*[.]$/u.test(text) && !/undefined|null|NaN|\[object/.test(text);

const minimumFirmware = [
  { model: 'AB-100', minimum: '2.0' },
  { model: 'CD-20', minimum: '2025-01-01' },
];

/** With its first cable twice: under one id, in the same sockets. */
const broken = (chain: Chain): Chain => ({ ...chain, links: [...chain.links, ...chain.links.slice(0, 1)] });

describe.each([english, german])('what is said of any chain in $tag', (language) => {
  const wrong = (said: readonly Message[]): string[] =>
    said.map((one) => messageText(one, language, 'UTC')).filter((text) => !isSentence(text));

  it('is in whole sentences', () => {
    fc.assert(
      fc.property(arbitraryChain(), fc.boolean(), (chain, duringTriage) => {
        const findings = auditChain(chain, { minimumFirmware, duringTriage });
        expect(wrong(findings.flatMap(({ text, whatToDo }) => [text, whatToDo]))).toEqual([]);
        expect(wrong(chainFaults(broken(chain)).map(({ said }) => said))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});
