import fc from 'fast-check';
import type { Chain, Device, Link, Port } from '../../../shared/contract/chain.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import { tmds18 } from '../../chain/build-chain.ts';

/** Four of five parts as they should be: an audit full of findings is slow to weigh, and no usual house. */
const asItShouldBe = fc.integer({ min: 0, max: 4 }).map((which) => which > 0);

const goodPort = (port: Port): Port => ({
  ...port,
  highestMode: tmds18,
  setMode: port.setMode === null ? null : tmds18,
  contentProtection: '2.2',
  fiveVoltMa: null,
});
const goodDevice = (device: Device): Device => ({
  ...device,
  edidHandling: { kind: 'passesOn' },
  ports: [...device.ports.map(goodPort), ...spareInputs(device)],
});
/** Where there is one input there mostly is another. */
const spareInputs = ({ role, ports }: Device): Port[] => {
  const input = ports.find(({ direction }) => direction === 'input');
  return input === undefined || role === 'splitter' || role === 'extender'
    ? []
    : [{ ...goodPort(input), id: 'spare', label: 'SPARE' }];
};
const goodLink = (link: Link): Link => ({
  ...link,
  category: link.construction === 'passiveCopper' ? 'premiumHighSpeed' : 'ultraHighSpeed',
  certified: true,
  lengthM: link.construction === 'passiveCopper' ? Math.min(link.lengthM, 3) : Math.min(link.lengthM, 15),
  direction: link.construction === 'passiveCopper' ? 'notDirectional' : 'asMarked',
  factoryFittedEnds: true,
  sourceEnd: { needsPower: false, powered: 'yes', seated: 'yes' },
  sinkEnd: { needsPower: false, powered: 'yes', seated: 'yes' },
  drawMa: null,
});

function mostlyGood(chain: Chain, good: readonly boolean[]): Chain {
  const isGood = (at: number): boolean => good[at % good.length] ?? true;
  return {
    ...chain,
    devices: chain.devices.map((each, at) => (isGood(at) ? goodDevice(each) : each)),
    links: chain.links.map((each, at) => (isGood(at + 3) ? goodLink(each) : each)),
  };
}

const ofSize = (maxSources: number, maxBetween: number, maxDisplays: number): fc.Arbitrary<Chain> =>
  fc
    .tuple(
      arbitraryChain({ maxSources, maxBetween, maxDisplays }),
      fc.array(asItShouldBe, { minLength: 7, maxLength: 7 }),
    )
    .map(([chain, good]) => mostlyGood(chain, good));

/** Chains to walk over: small ones mostly, now and then a house of fourteen devices. */
export const walkChains: fc.Arbitrary<Chain> = fc.oneof(
  { weight: 10, arbitrary: ofSize(1, 1, 1) },
  { weight: 8, arbitrary: ofSize(2, 2, 1) },
  { weight: 3, arbitrary: ofSize(2, 3, 2) },
  { weight: 1, arbitrary: ofSize(4, 7, 3) },
);
