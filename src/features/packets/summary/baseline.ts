import { placeKey } from '../../../../shared/chain/place.ts';
import type { Device, Finding } from '../../../../shared/contract/chain.ts';
import { findingSeverities } from '../../../../shared/contract/chain-names.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { none, section, table } from '../../../page/parts.ts';
import { chainOf, signature } from './parts.ts';
import { inWords, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined } from './words.ts';

/** The prerequisite audit, finding by finding. */
export function prerequisiteSection(file: CaseFile): Html {
  const t = wordsOf(file).prerequisites;
  const { findings, chainVersion } = file.prerequisites;
  const { audit } = file.triage;
  const lookedAt = audit === null ? t.notLookedAt : t.lookedAt(signature(file, audit));
  return section(
    'prerequisites',
    t.title,
    html`<p class="quiet">${joined([t.ofVersion(chainVersion), lookedAt, audit?.note ?? ''], ' ')}</p>`,
    table(
      t.heads,
      [...findings]
        .sort(bySeverity)
        .map((finding) => [
          severityWords(file, finding),
          ...[finding.placeName, finding.text, finding.whatToDo, finding.source].map((one) =>
            inWords(file, one),
          ),
        ]),
    ) ?? none(t.none),
  );
}

function severityWords(file: CaseFile, { severity }: Finding): string | Html {
  const words = valueWordsOf(file).severities[severity];
  return severity === 'mustFix' ? html`<span class="word warn">${words}</span>` : words;
}

const bySeverity = (one: Finding, other: Finding): number =>
  findingSeverities.indexOf(one.severity) - findingSeverities.indexOf(other.severity) ||
  placeKey(one.place).localeCompare(placeKey(other.place));

/** Firmware of every device, with where the level comes from. */
export function firmwareSection(file: CaseFile): Html {
  const { firmware: t, notKnown } = wordsOf(file);
  return section(
    'firmware',
    t.title,
    table(
      t.heads,
      file.firmware.map((entry) => [
        chainOf(file).devices.find(({ id }) => id === entry.deviceId)?.name ?? entry.deviceId,
        entry.level ?? html`<span class="word warn">${notKnown}</span>`,
        entry.minimum !== null && entry.belowMinimum === 'yes'
          ? html`<span class="word warn">${t.below(entry.minimum)}</span>`
          : entry.minimum,
        levelFrom(file, entry),
      ]),
    ) ?? none(t.noDevices),
  );
}

function levelFrom(file: CaseFile, { from, readAt, readBy }: CaseFile['firmware'][number]): string {
  const { firmware: t, readBy: read } = wordsOf(file);
  if (from === 'reading' && readAt !== null && readBy !== null)
    return read(signature(file, { at: readAt, by: readBy }));
  return from === 'description' ? t.description : '';
}

type SettingRow = { readonly value: string; readonly from: string };

/**
 * What each device is set to, setting by setting: the newest reading of it, else what the chain's description says.
 * A reading with a change in place counts only where that change was kept.
 */
function settingsOf(file: CaseFile, device: Device): Map<string, SettingRow> {
  const { firmware, readBy } = wordsOf(file);
  const kept = new Set(file.triage.changes.flatMap(({ id, status }) => (status === 'kept' ? [id] : [])));
  const rows = new Map<string, SettingRow>();
  for (const [key, value] of Object.entries(device.settings)) {
    rows.set(key, { value: String(value), from: firmware.description });
  }
  for (const { reading, tie, withdrawn, ...read } of file.evidence) {
    if (withdrawn !== null || reading?.kind !== 'settings' || tie.deviceId !== device.id) continue;
    if (reading.phase === 'after' && !kept.has(tie.changeId ?? '')) continue;
    for (const [key, value] of Object.entries(reading.values)) {
      rows.set(key, { value: String(value), from: readBy(signature(file, read)) });
    }
  }
  return rows;
}

/** Settings of every device, as far as anybody knows them. */
export function settingsSection(file: CaseFile): Html {
  const t = wordsOf(file).settings;
  const parts = chainOf(file).devices.flatMap((device) => {
    const rows = [...settingsOf(file, device)].map(([key, { value, from }]) => [key, value, from]);
    return rows.length === 0 ? [] : [html`<h3>${device.name}</h3>${table(t.heads, rows)}`];
  });
  return section(
    'settings',
    t.title,
    html`<p class="quiet">${t.hint}</p>`,
    parts.length === 0 ? none(t.none) : html`${parts}`,
  );
}
