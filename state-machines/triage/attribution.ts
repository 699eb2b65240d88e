import { namedPlace } from '../../shared/chain/named-place.ts';
import type { Chain, Settings } from '../../shared/contract/chain.ts';
import type { ChangeRecord, Judgement, TriageRecord } from '../../shared/contract/triage.ts';
import { type Message, message } from '../../shared/message/message.ts';
import type { NamedPlace } from '../../shared/message/values.ts';
import { standingEvidence } from './record.ts';
import { firmwareMoved, firmwareUnread } from './unattended.ts';

type Difference = Judgement['differences'][number];
export type Attribution = Pick<Judgement, 'attributable' | 'differences' | 'warnings'>;

/** The newest settings read out of each device before or after a change. */
function readings(record: TriageRecord, changeId: string, phase: 'before' | 'after'): Map<string, Settings> {
  const newest = new Map<string, Settings>();
  for (const { tie, reading } of standingEvidence(record)) {
    if (reading?.kind !== 'settings' || reading.phase !== phase) continue;
    if (tie.changeId === changeId && tie.deviceId !== null) newest.set(tie.deviceId, reading.values);
  }
  return newest;
}

function differencesAt(
  change: ChangeRecord,
  deviceId: string,
  before: Settings,
  after: Settings,
): Difference[] {
  const declared = new Map(
    change.settings.filter((each) => each.deviceId === deviceId).map((each) => [each.key, each.to]),
  );
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after), ...declared.keys()])].sort();
  return keys.flatMap((key): Difference[] => {
    const [was, is] = [before[key] ?? null, after[key] ?? null];
    const asDeclared = declared.get(key);
    if (was === is && asDeclared === undefined) return [];
    const declaredSo = was !== is && asDeclared === is;
    return [{ deviceId, key, before: was, after: is, declared: declaredSo }];
  });
}

/**
 * Compares the settings read before and after a change, device by device. They have to differ in what was declared
 * and in nothing else; otherwise what the retest says can't be put down to the change. Where nothing was read out
 * before and after, nothing speaks against it.
 */
export function attributionOf(record: TriageRecord, change: ChangeRecord, chain: Chain | null): Attribution {
  const before = readings(record, change.id, 'before');
  const after = readings(record, change.id, 'after');
  const differences = [...before].flatMap(([deviceId, values]) => {
    const later = after.get(deviceId);
    return later === undefined ? [] : differencesAt(change, deviceId, values, later);
  });
  const named = (deviceId: string): NamedPlace =>
    chain === null
      ? { kind: 'device', deviceId, role: null, name: deviceId, isShared: false }
      : namedPlace(chain, { kind: 'device', deviceId });
  const undeclared = differences.filter(({ declared }) => !declared);
  const moved = firmwareMoved(record, change);
  const unread = firmwareUnread(record, change);
  return {
    attributable: undeclared.length === 0 && moved.length === 0,
    differences,
    warnings: [
      ...undeclared.map((each) => warningOf(change, each, named(each.deviceId))),
      ...moved.map(({ deviceId, ...levels }) =>
        message('firmwareMoved', { device: named(deviceId), ...levels }),
      ),
      ...(unread.length === 0 ? [] : [message('firmwareUnread', { devices: unread.map(named) })]),
    ],
  };
}

function warningOf(
  change: ChangeRecord,
  { deviceId, key, before, after }: Difference,
  device: NamedPlace,
): Message {
  const declared = change.settings.find((each) => each.deviceId === deviceId && each.key === key);
  const seen = { device, setting: key, before: shown(before), after: shown(after) };
  return declared === undefined
    ? message('settingNotDeclared', seen)
    : message('settingNotAsDeclared', { ...seen, declared: String(declared.to) });
}

const shown = (value: unknown): string | null => (value === null ? null : String(value));
