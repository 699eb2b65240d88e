import { linkAtPort } from '../../../../shared/chain/look-up.ts';
import { namedPort } from '../../../../shared/chain/named-place.ts';
import type { Chain, Device, Port, PortRef } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { suspectIds } from './at-fault.ts';
import { cableWords } from './cable.ts';
import { chainDrawing } from './chain-drawing.ts';
import { chainOf, signature } from './parts.ts';
import { inWords, spoken, termOf, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined } from './words.ts';

/** The chain as found: drawing, cables, devices, and what was changed in its description since. */
export function chainSection(file: CaseFile): Html {
  const t = wordsOf(file).chain;
  const chain = chainOf(file);
  const { asFound } = file.triage;
  const linkNumbers = new Map(chain.links.map((link, index) => [link.id, index + 1]));
  const suspects = suspectIds(file);
  const marks = { linkNumbers, suspects: new Set(suspects), language: file.language };
  const wanted = chain.wantedFormats.map((format) => spoken(file, (say) => say.format(format)));
  return section(
    'chain',
    asFound === null ? t.titleAsDescribed : t.title,
    asFound !== null &&
      html`<p class="quiet">${t.recorded(asFound.chainVersion, signature(file, asFound))}</p>`,
    html`<figure class="wide">${chainDrawing(chain, marks)}</figure>`,
    suspects.length > 0 && html`<p class="quiet">${t.heavyOutline}</p>`,
    wanted.length > 0 && html`<p>${t.wanted(wanted.join(', '))}</p>`,
    html`<h3>${t.cables}</h3>`,
    table(
      t.cableHeads,
      chain.links.map((link) => [
        linkNumbers.get(link.id) ?? null,
        socketWords(file, link.from),
        socketWords(file, link.to),
        spoken(file, (say) => say.metres(link.lengthM)),
        cableWords(file, link),
      ]),
    ),
    html`<h3>${t.devices}</h3>`,
    table(
      t.deviceHeads,
      chain.devices.map((device) => deviceRow(file, chain, device)),
    ),
    html`<h3>${t.since}</h3>`,
    list(file.chain.sinceAsFound.map((one) => inWords(file, one))) ?? none(t.notChanged),
  );
}

const socketWords = (file: CaseFile, ref: PortRef): string =>
  spoken(file, (say) => say.socket(namedPort(chainOf(file), ref)));

function deviceRow(file: CaseFile, chain: Chain, device: Device): Html[] {
  const t = wordsOf(file).chain;
  const used = device.ports.filter((port) => linkAtPort(chain, { deviceId: device.id, portId: port.id }));
  const free = device.ports.filter((port) => !used.includes(port)).map(({ label }) => label);
  return [
    html`${device.name}${device.model !== null && html`<br>${device.model}`}${
      device.serial !== null && html`<br><span class="quiet">${t.serial(device.serial)}</span>`
    }`,
    html`${termOf(file, 'role', device.role)}`,
    html`${setUpWords(file, device)}`,
    html`${used.map((port, index) => html`${index > 0 && html`<br>`}${portWords(file, port)}`)}${
      free.length > 0 &&
      html`${used.length > 0 && html`<br>`}<span class="quiet">${t.free(free.join(', '))}</span>`
    }`,
  ];
}

function setUpWords(file: CaseFile, device: Device): string {
  const t = wordsOf(file).chain;
  const { outputFormat } = device;
  return joined(
    [
      device.drawsMenu ? t.drawsMenu : '',
      device.processesPicture ? t.processesPicture : '',
      valueWordsOf(file).edidHandlings[device.edidHandling.kind],
      outputFormat === null ? '' : t.sends(spoken(file, (say) => say.format(outputFormat))),
      device.notes,
    ],
    '; ',
  );
}

function portWords(file: CaseFile, port: Port): string {
  const t = wordsOf(file).chain;
  const { setMode, contentProtection } = port;
  return joined(
    [
      `${port.label} (${valueWordsOf(file).directions[port.direction]})`,
      spoken(file, (say) => say.mode(port.highestMode)),
      setMode === null ? '' : t.setTo(spoken(file, (say) => say.mode(setMode))),
      contentProtection === 'unknown' || contentProtection === 'none'
        ? ''
        : t.contentProtection(contentProtection),
    ],
    ', ',
  );
}
