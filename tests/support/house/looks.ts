import { findDevice, findPort } from '../../../shared/chain/graph.ts';
import { placeKey } from '../../../shared/chain/place.ts';
import type { LookSent, SignalSeen } from '../../../shared/contract/look.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { reachOf } from './doings.ts';
import type { Fault } from './faults.ts';
import type { House } from './house.ts';

/** What is to be looked at, with what is seen left out or filled in. */
export type ToLookAt = Pick<LookSent, 'kind' | 'deviceId'> & Record<string, unknown>;

const right = {
  kind: 'signal',
  resolution: { widthPx: 3840, heightPx: 2160 },
  refreshHz: 60,
  bitsPerComponent: 10,
  encoding: 'ycbcr422',
  hdr: 'static',
  protection: '2.2',
  linkGbps: 18,
} as const satisfies SignalSeen;

/** A signal as a page shows it where the fault is: by what the client complains of. */
function wrong(symptom: Symptom['kind']): SignalSeen {
  switch (symptom) {
    case 'noHdr':
      return { ...right, hdr: 'none', bitsPerComponent: 8 };
    case 'wrongRateOrResolution':
      return { ...right, refreshHz: 30, linkGbps: 9 };
    case 'contentProtectionMessage':
      return { ...right, protection: 'none' };
    default:
      return { kind: 'noSignal' };
  }
}

const settingCauses: ReadonlySet<Fault['cause']> = new Set(['portMode', 'hdrSetting', 'reset']);
const isAt = ({ at }: Fault, deviceId: string): boolean =>
  'deviceId' in at ? at.deviceId === deviceId : false;

/** What somebody who looks sees in a house, in the form that a look is recorded in. */
export function seenIn(house: House, what: ToLookAt, symptom: Symptom['kind']): Record<string, unknown> {
  const { deviceId } = what;
  const wrongSetting = house.faults.some((fault) => settingCauses.has(fault.cause) && isAt(fault, deviceId));
  switch (what.kind) {
    case 'signal': {
      const { receivesRight, sendsRight } = house.signalAt(deviceId, what.moment === 'good');
      const shown = (isRight: boolean): SignalSeen => (isRight ? right : wrong(symptom));
      const role = findDevice(house.chain, deviceId)?.role;
      const receives = role === 'source' ? null : shown(receivesRight);
      const sends = role === 'display' ? null : shown(sendsRight);
      return { ...what, said: { kind: 'read', receives, sends, intended: [] } };
    }
    case 'menu':
      return { ...what, survivesLossOfInput: house.menuFalls(deviceId) ? 'no' : 'yes', keepsFormat: 'yes' };
    case 'portMode': {
      const port = findPort(house.chain, { deviceId, portId: String(what.portId) });
      const low = { kind: 'set', mode: { kind: 'tmds', maxCharacterRateMHz: 300 } };
      const set = port?.setMode == null ? { kind: 'automatic' } : { kind: 'set', mode: port.setMode };
      return { ...what, found: wrongSetting ? low : set };
    }
    case 'setting':
      return { key: 'Input signal format', ...what, value: wrongSetting ? 'standard' : 'enhanced' };
    case 'witness':
      return {
        ...what,
        answer: house.faults.some((fault) => showsAt(house, fault, deviceId)) ? 'shows' : 'doesNotShow',
      };
  }
}

/** Whether a display beside, or another source, shows a fault too: it lies on that one's way. */
function showsAt({ chain }: House, { at, onlyWith }: Fault, deviceId: string): boolean {
  if (at.kind === 'chain') return true;
  if (onlyWith?.kind === 'source' && findDevice(chain, deviceId)?.role === 'source')
    return onlyWith.deviceId === deviceId;
  const { before, after } = reachOf(chain, at);
  return before.has(deviceId) || after.has(deviceId) || placeKey(at) === `device:${deviceId}`;
}
