import type { Chain, Place } from '../../shared/contract/chain.ts';
import { changeKinds } from '../../shared/contract/triage-names.ts';
import type { ChangeOption } from '../../shared/isolation/candidates.ts';
import { changeCatalogue } from '../../shared/isolation/change-catalogue.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { figureOf } from '../../shared/isolation/figures.ts';
import {
  cable,
  chainOf,
  display,
  extender,
  homeCinema,
  matrixSwitch,
  opticalCable,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
} from '../chain/build-chain.ts';

/**
 * Chains by the number of things that can be at fault: devices, links, and something outside the model. Chains are
 * trees, so those numbers are even.
 */
export const benchChains: Readonly<Record<number, () => Chain>> = {
  4: () => rowOf([source('player'), display('projector')], { lengthM: 10 }),
  6: () => rowOf([source('player'), receiver('receiver'), display('projector')], { lengthM: 7.5 }),
  8: () =>
    chainOf(
      [
        source('player'),
        receiver('receiver'),
        processor('processor', { processesPicture: true }),
        display('projector'),
      ],
      [
        cable('player.out1', 'receiver.in1', { id: 'L1' }),
        cable('receiver.out1', 'processor.in1', { id: 'L2' }),
        opticalCable('processor.out1', 'projector.in1', { id: 'L3' }),
      ],
    ),
  12: homeCinema,
  30: bigHouse,
};

function bigHouse(): Chain {
  return chainOf(
    [
      source('player'),
      source('streamer'),
      source('console'),
      source('recorder'),
      matrixSwitch('switch'),
      receiver('receiver'),
      processor('processor', { processesPicture: true }),
      splitter('splitter'),
      extender('extender1'),
      display('projector'),
      display('television'),
      extender('extender2'),
      display('bedroom'),
      extender('extender3'),
      display('kitchen'),
    ],
    [
      cable('player.out1', 'switch.in1', { id: 'L1' }),
      cable('streamer.out1', 'switch.in2', { id: 'L2' }),
      cable('console.out1', 'switch.in3', { id: 'L3' }),
      cable('recorder.out1', 'switch.in4', { id: 'L4' }),
      cable('switch.out1', 'receiver.in1', { id: 'L5', lengthM: 2 }),
      cable('receiver.out1', 'processor.in1', { id: 'L6', lengthM: 2 }),
      cable('processor.out1', 'extender1.in1', { id: 'L7' }),
      cable('extender1.out1', 'projector.in1', {
        id: 'L8',
        construction: 'twistedPairExtender',
        lengthM: 25,
      }),
      cable('receiver.out2', 'splitter.in1', { id: 'L9' }),
      opticalCable('splitter.out1', 'television.in1', { id: 'L10' }),
      cable('splitter.out2', 'extender2.in1', { id: 'L11' }),
      cable('extender2.out1', 'bedroom.in1', { id: 'L12', construction: 'twistedPairExtender', lengthM: 30 }),
      cable('splitter.out3', 'extender3.in1', { id: 'L13' }),
      cable('extender3.out1', 'kitchen.in1', { id: 'L14', construction: 'twistedPairExtender', lengthM: 20 }),
    ],
  );
}

/** Every change that makes sense somewhere on a chain before anything is known of the side, with the triage's minutes. */
export function changesOn(chain: Chain): ChangeOption[] {
  const option = (kind: ChangeOption['kind'], target: Place): ChangeOption => ({
    kind,
    target,
    setupMin: figureOf(faultTable.changeMinutes[kind], 'setup'),
    restoreMin: figureOf(faultTable.changeMinutes[kind], 'restore'),
  });
  const links = chain.links.flatMap(({ id, from, lengthM, route, construction }) => {
    const target: Place = { kind: 'link', linkId: id };
    const branches = chain.links.filter((other) => other.from.deviceId === from.deviceId).length > 1;
    return [
      option('reseat', target),
      ...(route === 'free' && construction !== 'activeOptical' ? [option('flexCable', target)] : []),
      option(lengthM <= 5 ? 'replaceCable' : 'temporaryCable', target),
      option('insertSyncSwitch', target),
      ...(branches ? [option('unplugBranch', target)] : []),
    ];
  });
  const devices = chain.devices.flatMap((device) => {
    const { id, role } = device;
    const target: Place = { kind: 'device', deviceId: id };
    const between = role !== 'source' && role !== 'display';
    const to: Record<string, boolean> = {
      otherSource: role === 'source',
      otherTitle: role === 'source',
      otherApplication: role === 'source',
      otherOutputSetting: role === 'source',
      lowerRate: role === 'source' || role === 'processor',
      raiseRate: role === 'source' || role === 'processor',
      powerCycle: true,
      controlBusOff: true,
      otherOutlet: true,
      otherSupply: true,
      clearVents: true,
      warmByUse: true,
      bypassDevice: between,
      sourceIntoProcessor: role === 'source' && chain.devices.some((other) => other.role === 'processor'),
      disableProcessing: device.processesPicture,
      limitInputBandwidth: ['processor', 'receiver', 'switch', 'display'].includes(role),
      limitOutputBandwidth: ['source', 'receiver', 'processor'].includes(role),
      reissueHotPlug: ['processor', 'receiver', 'switch'].includes(role),
      moveProcessorToDisplay: role === 'processor',
      substituteDisplay: role === 'display',
      restoreSettings: role === 'receiver' || role === 'processor',
      updateFirmware: true,
    };
    const whole = Object.keys(to).flatMap((kind) =>
      to[kind] ? [option(kind as ChangeOption['kind'], target)] : [],
    );
    const ports = chain.links.flatMap(({ from, to: into }) =>
      [from, into]
        .filter((end) => end.deviceId === id && role !== 'source')
        .map((end) => option('movePort', { kind: 'port', ...end })),
    );
    return [...whole, ...ports];
  });
  const whole = changeKinds
    .filter((kind) => changeCatalogue[kind].target === 'chain')
    .map((kind) => option(kind, { kind: 'chain' }));
  return [...links, ...devices, ...whole];
}
