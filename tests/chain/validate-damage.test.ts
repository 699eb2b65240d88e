import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainFaults } from '../../shared/chain/validate.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { arbitraryChain } from './arbitrary-chain.ts';

/** A pointer's value in the document, or a failure that says where it broke off. */
function valueAt(document: unknown, pointer: string): unknown {
  return pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], document);
}

describe('any damage whatever', () => {
  const damage = fc.record({
    links: fc.array(
      fc.record({
        id: fc.constantFrom('L1', 'L2', 'L99'),
        from: fc.record({
          deviceId: fc.constantFrom('d1', 'd2', 'd3', 'gone'),
          portId: fc.constantFrom('in1', 'out1', 'out2'),
        }),
        to: fc.record({
          deviceId: fc.constantFrom('d1', 'd2', 'd3', 'gone'),
          portId: fc.constantFrom('in1', 'in2', 'out1'),
        }),
        lengthM: fc.constantFrom(-1, 0, 2),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    twins: fc.boolean(),
  });

  it('ends, points into the document, and says something', () => {
    fc.assert(
      fc.property(arbitraryChain(), damage, (chain, { links, twins }) => {
        const [firstLink] = chain.links;
        if (firstLink === undefined) return;
        const broken = {
          ...chain,
          devices: twins ? [...chain.devices, ...chain.devices.slice(0, 1)] : chain.devices,
          links: [...chain.links, ...links.map((link) => ({ ...firstLink, ...link }))],
        };
        for (const { pointer, said } of chainFaults(broken)) {
          expect(valueAt(broken, pointer)).not.toBeUndefined();
          expect(Object.keys(codes)).toContain(said.code);
        }
      }),
      { numRuns: 200 },
    );
  });
});
