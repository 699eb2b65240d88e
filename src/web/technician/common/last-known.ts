import { findDevice } from '../../../../shared/chain/look-up.ts';
import type { Settings } from '../../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../../shared/contract/site.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { standingEvidence } from '../../../../state-machines/triage/record.ts';

/** A value that is known of a device: read on this ticket at that moment, or taken from the chain's description (null). */
export type Known<Value> = { readonly value: Value; readonly readAt: string | null };
type SettingValue = Settings[string];

/** What is known of a device's firmware: readings of this ticket, newest first, then the description. */
export function knownFirmware(ticket: Ticket, chain: ChainDocument, deviceId: string): Known<string>[] {
  const read = standingEvidence(ticket.triage).flatMap(({ tie, reading, at }): Known<string>[] =>
    tie.deviceId === deviceId && reading?.kind === 'firmware' ? [{ value: reading.level, readAt: at }] : [],
  );
  const described = findDevice(chain.chain, deviceId)?.firmware ?? null;
  return [...read.toSorted(newestFirst), ...(described === null ? [] : [{ value: described, readAt: null }])];
}

/** The last known value of every setting that is known of a device, in the order in which they are known. */
export function knownSettings(
  ticket: Ticket,
  chain: ChainDocument,
  deviceId: string,
): ReadonlyMap<string, Known<SettingValue>> {
  const known = new Map<string, Known<SettingValue>>();
  for (const [key, value] of Object.entries(findDevice(chain.chain, deviceId)?.settings ?? {}))
    known.set(key, { value, readAt: null });
  const readings = standingEvidence(ticket.triage)
    .flatMap(({ tie, reading, at }) =>
      tie.deviceId === deviceId && reading?.kind === 'settings'
        ? [{ values: reading.values, readAt: at }]
        : [],
    )
    .toSorted(newestFirst)
    .toReversed();
  for (const { values, readAt } of readings)
    for (const [key, value] of Object.entries(values)) known.set(key, { value, readAt });
  return known;
}

const newestFirst = (one: { readAt: string | null }, other: { readAt: string | null }): number =>
  (other.readAt ?? '').localeCompare(one.readAt ?? '');

/** What was typed, of the kind that the setting was before: `5` stays a number where it was one. */
export function settingFrom(text: string, before: SettingValue | undefined): SettingValue {
  const typed = text.trim();
  if (before === undefined || typeof before === 'string') return typed;
  if (typeof before === 'boolean') return typed === 'true' ? true : typed === 'false' ? false : typed;
  const value = Number(typed.replace(',', '.'));
  return typed !== '' && Number.isFinite(value) ? value : typed;
}
