import type { Chain } from './record.ts';

/** A device's role and name, as version 1 wrote them into sentences: `processor 'Cinema processor'`. */
export function deviceName({ devices }: Chain, deviceId: string): string {
  const device = devices.find(({ id }) => id === deviceId);
  if (device === undefined) return `device '${deviceId}'`;
  const isShared = devices.some(({ id, name }) => name === device.name && id !== deviceId);
  return `${device.role} '${device.name}'${isShared ? ` (${deviceId})` : ''}`;
}
