import { metres } from '../../../../shared/chain/link-words.ts';
import { linkAtPort } from '../../../../shared/chain/look-up.ts';
import { placeKey, socketName } from '../../../../shared/chain/place.ts';
import { formatName, modeName } from '../../../../shared/chain/signal-mode.ts';
import type { Chain, Device, Finding, Port } from '../../../../shared/contract/chain.ts';
import { findingSeverities } from '../../../../shared/contract/chain-names.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { chainDrawing } from './chain-drawing.ts';
import { chainOf, inEnglish, signature } from './parts.ts';
import { isNarrowed } from './side.ts';
import { linkWords } from './words.ts';

/** The chain as found: drawing, cables, devices, and what was changed in its description since. */
export function chainSection(file: CaseFile): Html {
  const chain = chainOf(file);
  const { asFound } = file.triage;
  const numbers = new Map(chain.links.map((link, index) => [link.id, index + 1]));
  const suspects =
    isNarrowed(file) && file.segment !== null ? [...file.segment.deviceIds, ...file.segment.linkIds] : [];
  return section(
    'chain',
    asFound === null ? 'The chain as described; not yet recorded as found' : 'The chain as found',
    asFound !== null &&
      html`<p class="quiet">Version ${asFound.chainVersion}, recorded by ${signature(file, asFound)}</p>`,
    html`<figure class="wide">${chainDrawing(chain, numbers, new Set(suspects))}</figure>`,
    suspects.length > 0 && html`<p class="quiet">Heavy outline: where the fault still can be.</p>`,
    chain.wantedFormats.length > 0 &&
      html`<p>Wanted through this chain: ${chain.wantedFormats.map(formatName).join(', ')}.</p>`,
    html`<h3>Cables</h3>`,
    table(
      ['No.', 'From', 'To', 'Length', 'Cable'],
      chain.links.map((link) => [
        numbers.get(link.id) ?? null,
        socketName(chain, link.from),
        socketName(chain, link.to),
        metres(link.lengthM),
        linkWords(link),
      ]),
    ),
    html`<h3>Devices</h3>`,
    table(
      ['Device', 'Role', 'Set up as', 'Ports'],
      chain.devices.map((device) => deviceRow(chain, device)),
    ),
    html`<h3>The description since</h3>`,
    list(file.chain.sinceAsFound.map(inEnglish)) ?? none('Nothing in it was changed since.'),
  );
}

function deviceRow(chain: Chain, device: Device): Html[] {
  const used = device.ports.filter((port) => linkAtPort(chain, { deviceId: device.id, portId: port.id }));
  const free = device.ports.filter((port) => !used.includes(port)).map(({ label }) => label);
  return [
    html`${device.name}${device.model !== null && html`<br>${device.model}`}${
      device.serial !== null && html`<br><span class="quiet">serial ${device.serial}</span>`
    }`,
    html`${device.role}`,
    html`${setUpWords(device).join('; ')}`,
    html`${used.map((port, index) => html`${index > 0 && html`<br>`}${portWords(port)}`)}${
      free.length > 0 &&
      html`${used.length > 0 && html`<br>`}<span class="quiet">free: ${free.join(', ')}</span>`
    }`,
  ];
}

function setUpWords(device: Device): string[] {
  const edid = {
    passesOn: '',
    limits: 'limits the EDID it passes on',
    replaces: 'answers with an EDID of its own',
  };
  return [
    device.drawsMenu ? 'draws its own menu' : '',
    device.processesPicture ? 'processes the picture' : '',
    edid[device.edidHandling.kind],
    device.outputFormat === null ? '' : `always sends ${formatName(device.outputFormat)}`,
    device.notes,
  ].filter((part) => part !== '');
}

const portWords = (port: Port): string =>
  [
    `${port.label} (${port.direction})`,
    modeName(port.highestMode),
    port.setMode === null ? '' : `set to ${modeName(port.setMode)}`,
    port.contentProtection === 'unknown' || port.contentProtection === 'none'
      ? ''
      : `content protection ${port.contentProtection}`,
  ]
    .filter((part) => part !== '')
    .join(', ');

const severities: Record<Finding['severity'], string> = {
  mustFix: 'must be put right',
  shouldFix: 'should be put right',
  note: 'note',
};

/** The prerequisite audit, finding by finding. */
export function prerequisiteSection(file: CaseFile): Html {
  const { findings, chainVersion } = file.prerequisites;
  const { audit } = file.triage;
  return section(
    'prerequisites',
    'Prerequisites',
    html`<p class="quiet">Of chain version ${chainVersion}. ${
      audit === null ? 'Nobody on site has looked at them yet.' : `Looked at: ${signature(file, audit)}.`
    } ${audit?.note}</p>`,
    table(
      ['', 'Where', 'Finding', 'To do', 'Source'],
      [...findings]
        .sort(bySeverity)
        .map((finding) => [
          finding.severity === 'mustFix'
            ? html`<span class="word warn">${severities.mustFix}</span>`
            : severities[finding.severity],
          ...[finding.placeName, finding.text, finding.whatToDo, finding.source].map(inEnglish),
        ]),
    ) ?? none('No finding.'),
  );
}

const bySeverity = (one: Finding, other: Finding): number =>
  findingSeverities.indexOf(one.severity) - findingSeverities.indexOf(other.severity) ||
  placeKey(one.place).localeCompare(placeKey(other.place));

/** Firmware of every device, with where the level comes from. */
export const firmwareSection = (file: CaseFile): Html =>
  section(
    'firmware',
    'Firmware',
    table(
      ['Device', 'Level', 'Least level set', 'From'],
      file.firmware.map((entry) => [
        chainOf(file).devices.find(({ id }) => id === entry.deviceId)?.name ?? entry.deviceId,
        entry.level ?? html`<span class="word warn">not known</span>`,
        entry.minimum === null
          ? ''
          : entry.belowMinimum === 'yes'
            ? html`<span class="word warn">below ${entry.minimum}</span>`
            : entry.minimum,
        entry.from === 'reading' && entry.readAt !== null && entry.readBy !== null
          ? `read by ${signature(file, { at: entry.readAt, by: entry.readBy })}`
          : entry.from === 'description'
            ? 'the description of the chain'
            : '',
      ]),
    ) ?? none('The chain has no devices.'),
  );

type SettingRow = { readonly value: string; readonly from: string };

/**
 * What each device is set to, setting by setting: the newest reading of it, else what the chain's description says.
 * A reading with a change in place counts only where that change was kept.
 */
function settingsOf(file: CaseFile, device: Device): Map<string, SettingRow> {
  const kept = new Set(file.triage.changes.flatMap(({ id, status }) => (status === 'kept' ? [id] : [])));
  const rows = new Map<string, SettingRow>();
  for (const [key, value] of Object.entries(device.settings)) {
    rows.set(key, { value: String(value), from: 'the description of the chain' });
  }
  for (const { reading, tie, withdrawn, ...read } of file.evidence) {
    if (withdrawn !== null || reading?.kind !== 'settings' || tie.deviceId !== device.id) continue;
    if (reading.phase === 'after' && !kept.has(tie.changeId ?? '')) continue;
    for (const [key, value] of Object.entries(reading.values)) {
      rows.set(key, { value: String(value), from: `read by ${signature(file, read)}` });
    }
  }
  return rows;
}

/** Settings of every device, as far as anybody knows them. */
export function settingsSection(file: CaseFile): Html {
  const parts = chainOf(file).devices.flatMap((device) => {
    const rows = [...settingsOf(file, device)].map(([key, { value, from }]) => [key, value, from]);
    return rows.length === 0
      ? []
      : [html`<h3>${device.name}</h3>${table(['Setting', 'Value', 'From'], rows)}`];
  });
  return section(
    'settings',
    'Settings',
    html`<p class="quiet">What differed before and after a change stands with that change.</p>`,
    parts.length === 0 ? none('No settings were read out.') : html`${parts}`,
  );
}
