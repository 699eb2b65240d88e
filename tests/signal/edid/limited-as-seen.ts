import {
  decodeEdid,
  type Edid,
  type EdidLimits,
  encodeEdid,
  limitEdid,
} from '../../../shared/signal/edid/index.ts';

/** Limited, written and read again, as a source would see it; throws when anything is wrong with it. */
export function limitedAsSeen(display: Edid, limits: EdidLimits): Edid {
  const { edid, problems } = decodeEdid(encodeEdid(limitEdid(display, limits)));
  const errors = problems.filter(({ severity }) => severity === 'error');
  if (!edid || errors.length > 0) throw new Error(`The limited EDID is broken: ${JSON.stringify(errors)}`);
  return edid;
}
