import type { VideoFormat } from '../../../shared/contract/chain.ts';
import {
  cable,
  chainOf,
  display,
  frl48,
  homeCinema,
  input,
  output,
  source,
  tmds9,
  withDevice,
  withLink,
  withPort,
} from '../../chain/build-chain.ts';
import { edid1080, format } from '../../signal/link-budget/chains.ts';
import { edid18, fastPair, hd60, pair, uhd60, wanting } from './build.ts';
import type { Row } from './row.ts';

const cinema = wanting(homeCinema(), uhd60);
const uhd60Deep = format(2160, 60, 'rgb', 10);

/** Chains whose ports, EDIDs and devices are right or faulty. */
export const deviceRows: Row[] = [
  ['a home cinema in good order', cinema, []],
  [
    'an input that is set too low',
    withPort(cinema, 'receiver', 'in1', { setMode: tmds9 }),
    ['port-mode mustFix receiver.in1: portSetBelowNeed > setPortMode'],
  ],
  [
    'the same where less is wanted',
    wanting(withPort(homeCinema(), 'receiver', 'in1', { setMode: tmds9 }), hd60),
    [],
  ],
  [
    'a display that passes less, and has no better input',
    withPort(withPort(pair(), 'tv', 'in1', { highestMode: tmds9 }), 'tv', 'in2', { highestMode: tmds9 }),
    ['link-budget mustFix L: formatTooMuch > useFasterPort'],
  ],
  [
    'a display that passes less, and has a better input free',
    withPort(pair(), 'tv', 'in1', { highestMode: tmds9 }),
    ['lower-rate-port mustFix tv.in1: portOfLowerRate > movePlug'],
  ],
  [
    'a second display that can’t show what is wanted of the first',
    withPort(withPort(cinema, 'television', 'in1', { highestMode: tmds9 }), 'television', 'in2', {
      highestMode: tmds9,
    }),
    [],
  ],
  [
    'a display whose EDID doesn’t offer it',
    withPort(pair(), 'tv', 'in1', { edidHex: edid1080 }),
    ['link-budget shouldFix L: formatNotOffered > setInputOrAskForListed'],
  ],
  ['a display whose EDID offers it', withPort(pair(), 'tv', 'in1', { edidHex: edid18 }), []],
  [
    'a format that TMDS ports can’t carry, on a cable that would do',
    pair({ category: 'ultraHighSpeed' }, uhd60Deep),
    ['link-budget mustFix L: formatTooMuch > useFasterPort'],
  ],
  [
    'a format that goes only compressed',
    fastPair({}, format(4320, 60, 'rgb', 10)),
    ['link-budget note L: formatOnlyCompressed > checkSourceCompresses'],
  ],
  [
    'a format that would go only compressed, and that the EDID doesn’t offer',
    slowSource(format(2160, 100, 'rgb', 10)),
    ['link-budget shouldFix L: formatNotOffered > setInputOrAskForListed'],
  ],
  ['a format that no link carries', chainWithout8k(), ['link-budget mustFix L: formatTooMuch > askForLess']],
  [
    'a sampling that does not exist',
    pair({}, format(2160, 60, 'ycbcr422', 16)),
    ['link-budget mustFix L: formatTooMuch > askForExistingFormat'],
  ],
  [
    'a receiver that scales before the processor',
    withDevice(cinema, 'receiver', { processesPicture: true }),
    ['processing shouldFix receiver: processesBesideProcessor > switchProcessingOff'],
  ],
  [
    'a firmware of which it can’t be told whether it is newer',
    withDevice(pair(), 'tv', { model: 'TV-1', firmware: '1.1' }),
    ['firmware-level note tv: firmwareLevelUnknown > askBeforeUpdating'],
    {},
    [{ model: 'TV-1', minimum: '1.02' }],
  ],
  [
    'a firmware of which it can’t be told whether it is less, 1.2 beside 1.20',
    withDevice(pair(), 'tv', { model: 'TV-1', firmware: '1.2' }),
    ['firmware-level note tv: firmwareLevelUnknown > askBeforeUpdating'],
    {},
    [{ model: 'TV-1', minimum: '1.20' }],
  ],
  [
    'a firmware that nobody has read',
    withDevice(pair(), 'tv', { model: 'TV-1' }),
    ['firmware-level note tv: firmwareLevelUnknown > readFirmware'],
    {},
    [{ model: 'TV-1', minimum: '1.02' }],
  ],
  [
    'a cable of another branch than the display with the fault',
    withLink(cinema, 'L5', { category: 'highSpeed', certified: false }),
    ['certification mustFix L5: onAnotherBranch > replaceByCertifiedCable'],
    { displayId: 'projector' },
  ],
];

/** A source of 24 Gbit/s on a television of 48 that takes compressed video. */
function slowSource(wanted: VideoFormat) {
  return withPort(fastPair({}, wanted), 'console', 'out1', {
    highestMode: { kind: 'frl', lanes: 4, gbpsPerLane: 6 },
  });
}

/** A link of 48 Gbit/s, no EDID known, on which nobody can say that it takes compressed video. */
function chainWithout8k() {
  const fast = { highestMode: frl48, contentProtection: '2.3' } as const;
  return wanting(
    chainOf(
      [source('pc', { ports: [output('out1', fast)] }), display('tv', { ports: [input('in1', fast)] })],
      [cable('pc.out1', 'tv.in1', { id: 'L', category: 'ultraHighSpeed' })],
    ),
    format(4320, 60, 'rgb', 10),
  );
}
