import { deviceName } from './names.ts';
import { type Chain, type Change, type RecordThen, standingEvidence } from './record.ts';

type Settings = Readonly<Record<string, unknown>>;
type Difference = { deviceId: string; key: string; before: unknown; after: unknown; declared: boolean };
export type Attribution = { attributable: boolean; differences: Difference[]; warnings: string[] };

/** The newest settings read out of each device before or after a change. */
function readings(record: RecordThen, changeId: string, phase: 'before' | 'after'): Map<string, Settings> {
  const newest = new Map<string, Settings>();
  for (const { tie, reading } of standingEvidence(record)) {
    if (reading?.kind !== 'settings' || reading.phase !== phase) continue;
    if (tie.changeId === changeId && tie.deviceId !== null) newest.set(tie.deviceId, reading.values);
  }
  return newest;
}

function differencesAt(change: Change, deviceId: string, before: Settings, after: Settings): Difference[] {
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
export function attributionOf(record: RecordThen, change: Change, chain: Chain | null): Attribution {
  const before = readings(record, change.id, 'before');
  const after = readings(record, change.id, 'after');
  const differences = [...before].flatMap(([deviceId, values]) => {
    const later = after.get(deviceId);
    return later === undefined ? [] : differencesAt(change, deviceId, values, later);
  });
  const name = (deviceId: string) => (chain === null ? deviceId : deviceName(chain, deviceId));
  const undeclared = differences.filter(({ declared }) => !declared);
  return {
    attributable: undeclared.length === 0,
    differences,
    warnings: undeclared.map((each) => warningOf(change, each, name(each.deviceId))),
  };
}

function warningOf(change: Change, { deviceId, key, before, after }: Difference, name: string): string {
  const declared = change.settings.find((each) => each.deviceId === deviceId && each.key === key);
  const [was, is] = [shown(before), shown(after)];
  return declared === undefined
    ? `At ${name}, ‘${key}’ went from ${was} to ${is} without being declared.`
    : `At ${name}, ‘${key}’ was declared to become ${shown(declared.to)}; it was ${was} and is ${is}.`;
}

const shown = (value: unknown): string => (value === null ? 'nothing' : `‘${String(value)}’`);
