import { type Chain, type VideoFormat, videoFormat } from '../../../shared/contract/chain.ts';
import { homeCinema, withPort } from '../../chain/build-chain.ts';
import { display18, display48, edidHex } from './build-edid.ts';

export const edid18 = edidHex(display18);
export const edid48 = edidHex(display48);
export const edid48Plain = edidHex({ ...display48, compression: false });
export const edid9 = edidHex({ ...display18, maxTmdsMHz: 300 });
/** A display of 1080 lines. */
export const edid1080 = edidHex({
  ...display18,
  vics: [16, 31, 32],
  vics420: [],
  detailed: { clock10KHz: 14850, widthPx: 1920, blankPx: 280, lines: 1080, blankLines: 45 },
});

/** A format 16:9. */
export function format(
  heightPx: number,
  refreshHz: number,
  encoding: VideoFormat['encoding'],
  bitsPerComponent: VideoFormat['bitsPerComponent'],
): VideoFormat {
  return videoFormat.parse({ widthPx: (heightPx * 16) / 9, heightPx, refreshHz, encoding, bitsPerComponent });
}
export const uhd60 = format(2160, 60, 'rgb', 8);
export const uhd120 = format(2160, 120, 'rgb', 10);

/** `of` with an EDID recorded at a port. */
export const withEdid = (of: Chain, deviceId: string, portId: string, edid: string): Chain =>
  withPort(of, deviceId, portId, { edidHex: edid });

/** The home cinema in good order, with both displays' EDIDs known. */
export const cinema = (): Chain =>
  withEdid(withEdid(homeCinema(), 'projector', 'in1', edid18), 'television', 'in1', edid18);
