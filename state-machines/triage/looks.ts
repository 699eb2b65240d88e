import { downstreamOf, findDevice, upstreamOf } from '../../shared/chain/graph.ts';
import type { Chain, Device } from '../../shared/contract/chain.ts';
import type { LookOf } from '../../shared/contract/look.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import { standingLooks } from './record.ts';
import type { SignalLook } from './trace.ts';

/** Readings of the chain as found: what a device says while a change is in place is about another chain. */
export const readingsAsFound = (record: TriageRecord): SignalLook[] =>
  standingLooks(record, 'signal').filter(({ changeId }) => changeId === null);

type MenuQualities = {
  survivesLossOfInput: Device['menuKeepsFormat'];
  keepsFormat: Device['menuKeepsFormat'];
};

/** What is known of a device's menu: tried on site, in whichever round, or told by the description of the chain. */
export function menuQualitiesAt(record: TriageRecord, chain: Chain, deviceId: string): MenuQualities {
  const device = findDevice(chain, deviceId);
  const tried = record.looks.findLast(
    (look): look is LookOf<'menu'> =>
      look.what.kind === 'menu' && look.what.deviceId === deviceId && look.withdrawn === null,
  );
  const told = {
    survivesLossOfInput: device?.menuSurvivesLossOfInput ?? 'unknown',
    keepsFormat: device?.menuKeepsFormat ?? 'unknown',
  };
  if (tried === undefined) return told;
  const { survivesLossOfInput, keepsFormat } = tried.what;
  return {
    survivesLossOfInput: survivesLossOfInput === 'unknown' ? told.survivesLossOfInput : survivesLossOfInput,
    keepsFormat: keepsFormat === 'unknown' ? told.keepsFormat : keepsFormat,
  };
}

/** Whether both things that let a menu that vanished tell a side are known. */
export const isMenuKnown = (record: TriageRecord, chain: Chain, deviceId: string): boolean => {
  const { survivesLossOfInput, keepsFormat } = menuQualitiesAt(record, chain, deviceId);
  return survivesLossOfInput !== 'unknown' && keepsFormat !== 'unknown';
};

/** The chain with what was found by looking: what menus do by themselves, and what sockets are set to. */
export function chainAsSeen(record: TriageRecord, chain: Chain): Chain {
  if (record.looks.length === 0) return chain;
  const modes = new Map(
    standingLooks(record, 'portMode').map(({ what }) => [`${what.deviceId} ${what.portId}`, what.found]),
  );
  return {
    ...chain,
    devices: chain.devices.map((device) => {
      const menu = menuQualitiesAt(record, chain, device.id);
      return {
        ...device,
        menuSurvivesLossOfInput: menu.survivesLossOfInput,
        menuKeepsFormat: menu.keepsFormat,
        ports: device.ports.map((port) => {
          const found = modes.get(`${device.id} ${port.id}`);
          return found?.kind === 'set' ? { ...port, setMode: found.mode } : port;
        }),
      };
    }),
  };
}

/**
 * Where the way to a witness parts from the way to the display that shows the fault, or where the way from it joins
 * the one of the source that does.
 *
 * @returns the id of the last device that both have in common, seen from the display; null where they share none
 */
export function meetingPoint(
  chain: Chain,
  { deviceId, besideId }: { deviceId: string; besideId: string },
): string | null {
  const isDisplay = findDevice(chain, deviceId)?.role === 'display';
  const shared = isDisplay ? upstreamOf : downstreamOf;
  const other = shared(chain, besideId);
  const common = [...shared(chain, deviceId)].filter((id) => other.has(id));
  return common.find((id) => !common.some((each) => shared(chain, each).has(id))) ?? null;
}
