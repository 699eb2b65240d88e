import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../shared/contract/chain.ts';
import { cablePowerSupplyMa, powerBudget } from '../../../shared/signal/power.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  opticalCable,
  receiver,
  rowOf,
  source,
  withLink,
  withPort,
} from '../../chain/build-chain.ts';

const only = (chain: Chain) => {
  const [link] = powerBudget(chain);
  if (link === undefined) throw new Error('no link');
  return link;
};
const unpoweredOptical = () =>
  chainOf(
    [source('s'), display('d')],
    [opticalCable('s.out1', 'd.in1', { sinkEnd: { needsPower: false, powered: 'unknown', seated: 'yes' } })],
  );

describe('the 5 V budget of a link', () => {
  // HDMI 1.4b, 4.2.7 (from memory): 55 mA at least from the source, 50 at most into the sink: 5 are left.
  it('of passive copper is what the standard leaves', () => {
    expect(only(rowOf([source('s'), display('d')]))).toMatchObject({
      supply: { ma: 55, basis: 'standard' },
      sink: { ma: 50, basis: 'standard' },
      cable: { ma: 0, basis: 'standard' },
      balanceMa: 5,
      verdict: 'enough',
    });
  });

  it('says in mA why an optical cable on a source is a risk', () => {
    expect(only(unpoweredOptical())).toMatchObject({
      cable: { ma: 100, basis: 'assumed' },
      balanceMa: -95,
      verdict: 'risk',
      opticalOnSource: true,
      sentence: {
        code: 'fiveVoltOpticalOnSource',
        values: {
          offered: 300,
          budget: {
            code: 'fiveVoltBudget',
            values: {
              supply: { code: 'suppliesAtLeast', values: { supply: 55 } },
              sink: { code: 'mayTake', values: { draw: 50 } },
              cable: { code: 'cableTakesAbout', values: { construction: 'activeOptical', draw: 100 } },
              balance: { code: 'currentShort', values: { short: 95 } },
            },
          },
        },
      },
    });
  });

  it('goes by the record where there is one', () => {
    const chain = withLink(unpoweredOptical(), 's-d', {});
    const recorded = withPort(withPort(chain, 's', 'out1', { fiveVoltMa: cablePowerSupplyMa }), 'd', 'in1', {
      fiveVoltMa: 10,
    });
    expect(only(recorded)).toMatchObject({ balanceMa: 300 - 10 - 100, verdict: 'enough' });
    const [link] = chain.links;
    const drawn = withLink(
      withPort(withPort(chain, 's', 'out1', { fiveVoltMa: 100 }), 'd', 'in1', { fiveVoltMa: 10 }),
      link?.id ?? '',
      { drawMa: 120 },
    );
    expect(only(drawn)).toMatchObject({ balanceMa: -30, verdict: 'short' });
    expect(only(drawn).sentence.values.budget).toMatchObject({
      values: {
        supply: { code: 'supplies', values: { supply: 100 } },
        sink: { code: 'takes', values: { draw: 10 } },
        cable: { code: 'cableTakes', values: { draw: 120 } },
        balance: { code: 'currentShort', values: { short: 30 } },
      },
    });
  });

  it('takes nothing for a cable with a supply of its own', () => {
    const chain = chainOf([receiver('r'), display('d')], [opticalCable('r.out1', 'd.in1')]);
    expect(only(chain)).toMatchObject({
      cable: { ma: 0, basis: 'ownSupply' },
      verdict: 'enough',
      opticalOnSource: false,
    });
  });

  it('follows what an organisation assumes', () => {
    const [link] = powerBudget(unpoweredOptical(), { activeOptical: 4 });
    expect(link).toMatchObject({ balanceMa: 1, verdict: 'enough' });
  });

  it('is worked out for every link that has both ends, and adds up', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        const budget = powerBudget(chain);
        expect(budget.map(({ linkId }) => linkId)).toEqual(chain.links.map(({ id }) => id));
        for (const { supply, sink, cable: drawn, balanceMa, verdict } of budget) {
          expect(balanceMa).toBeCloseTo(supply.ma - sink.ma - drawn.ma, 9);
          expect(verdict === 'enough').toBe(balanceMa >= 0);
        }
      }),
    );
  });

  it('leaves out links to nowhere', () => {
    const { devices, links } = homeCinema();
    expect(powerBudget(chainOf(devices, [...links, cable('player.out9', 'x.in1')]))).toHaveLength(5);
  });
});
