import {
  cable,
  chainOf,
  display,
  extender,
  homeCinema,
  input,
  matrixSwitch,
  opticalCable,
  output,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  tmds9,
  withDevice,
  withLink,
  withPort,
} from '../chain/build-chain.ts';

/** 2160p at 60 Hz in 8 bits of RGB: 18 Gbit/s. */
const wanted = {
  widthPx: 3840,
  heightPx: 2160,
  interlaced: false,
  refreshHz: 60,
  encoding: 'rgb' as const,
  bitsPerComponent: 8 as const,
};

/** Disc player and streamer, receiver, processor, projector at 15 m of optical cable, and a television beside it. */
export const cinema = () => homeCinema();

/** As `cinema`; the receiver's first input was never told to pass the high rate. */
export const cinemaWithLowInput = () => ({
  ...withPort(homeCinema(), 'receiver', 'in1', { setMode: tmds9 }),
  wantedFormats: [wanted],
});

/** As `cinema`, with settings read out at receiver and projector. */
export const cinemaWithSettings = () =>
  withDevice(
    withDevice(homeCinema(), 'receiver', { settings: { 'Input signal format': 'enhanced' } }),
    'projector',
    {
      settings: { 'Input range': 'auto', 'HDR mode': 'on' },
    },
  );

/** One player, a receiver, a projector. */
export const row = () =>
  rowOf([source('player'), receiver('receiver'), display('projector')], { lengthM: 7.5 });

/** A streamer straight on a television, through a wall plate and a cable in the wall. */
export const wall = () =>
  withLink(
    rowOf([source('streamer', { name: 'Streamer' }), display('television', { name: 'Television' })], {
      lengthM: 9,
    }),
    'streamerout1-televisionin1',
    { route: 'inWall', factoryFittedEnds: false, certified: false, notes: 'Through a wall plate.' },
  );

/** Three sources on a switch, a receiver, a splitter, a projector and a bedroom behind an extender. */
export const house = () =>
  chainOf(
    [
      source('player'),
      source('streamer', { name: 'Streamer' }),
      source('console', { name: 'Games console' }),
      matrixSwitch('switch'),
      receiver('receiver'),
      splitter('splitter'),
      display('projector'),
      extender('extender'),
      display('bedroom', { name: 'Bedroom television' }),
    ],
    [
      cable('player.out1', 'switch.in1', { id: 'L1' }),
      cable('streamer.out1', 'switch.in2', { id: 'L2' }),
      cable('console.out1', 'switch.in3', { id: 'L3' }),
      cable('switch.out1', 'receiver.in1', { id: 'L4', lengthM: 2 }),
      cable('receiver.out1', 'splitter.in1', { id: 'L5', lengthM: 2 }),
      opticalCable('splitter.out1', 'projector.in1', { id: 'L6' }),
      cable('splitter.out2', 'extender.in1', { id: 'L7' }),
      cable('extender.out1', 'bedroom.in1', { id: 'L8', construction: 'twistedPairExtender', lengthM: 25 }),
    ],
  );

/** A games console and a player into a processor, active copper to a projector. */
export const gamesRoom = () =>
  chainOf(
    [
      source('console', { name: 'Games console' }),
      source('player'),
      processor('processor', { processesPicture: true }),
      display('projector'),
    ],
    [
      cable('console.out1', 'processor.in1', { id: 'G1', lengthM: 2 }),
      cable('player.out1', 'processor.in2', { id: 'G2', lengthM: 1.5 }),
      cable('processor.out1', 'projector.in1', {
        id: 'G3',
        construction: 'activeCopper',
        lengthM: 10,
        direction: 'asMarked',
        route: 'inConduit',
      }),
    ],
  );

/** A set-top box and a player into a receiver without a menu, a twisted-pair extender, a television. */
export const lounge = () =>
  chainOf(
    [
      source('box', { name: 'Set-top box' }),
      source('player'),
      receiver('receiver', { drawsMenu: false }),
      extender('extender', { ports: [input('in1'), output('out1', { fiveVoltMa: 55 })] }),
      display('television', { name: 'Television' }),
    ],
    [
      cable('box.out1', 'receiver.in1', { id: 'B1' }),
      cable('player.out1', 'receiver.in2', { id: 'B2' }),
      cable('receiver.out1', 'extender.in1', { id: 'B3', lengthM: 1 }),
      cable('extender.out1', 'television.in1', {
        id: 'B4',
        construction: 'twistedPairExtender',
        lengthM: 20,
        route: 'inWall',
      }),
    ],
  );
