import { signalOrder } from '../../../../shared/chain/graph.ts';
import type { Chain, Device, Link } from '../../../../shared/contract/chain.ts';
import type { LanguageTag } from '../../../../shared/contract/language-names.ts';
import { Html, html } from '../../../page/html.ts';
import { spoken, termOf, wordsOf } from './tongue.ts';
import { joined } from './words.ts';

const box = { width: 200, height: 62 } as const;
const pitch = { across: 224, down: 132 } as const;
const margin = 12;

/** What a drawing says of its chain beside what is in it. */
type Marks = {
  readonly linkNumbers: ReadonlyMap<string, number>;
  readonly suspects: ReadonlySet<string>;
  readonly language: LanguageTag;
};

/** A device in its place, or a link on its way past a row. */
type Cell = { key: string; device: Device | null; from: string[] };

/**
 * The chain as a drawing: sources at the top, displays at the bottom, a row a step of the signal, cables numbered as
 * in the table beside it. Suspects have a heavy outline and say so. A way past a row keeps a place in it of its own,
 * so that no cable runs through a device.
 */
export function chainDrawing(chain: Chain, marks: Marks): Html {
  const { linkNumbers, suspects } = marks;
  const rows = arranged(rowsOf(chain));
  const widest = Math.max(1, ...rows.map((row) => row.length));
  const width = margin * 2 + widest * pitch.across;
  const height = margin * 2 + Math.max(1, rows.length) * pitch.down - (pitch.down - box.height);
  const centres = new Map<string, { x: number; y: number }>();
  for (const [down, row] of rows.entries()) {
    const left = (width - row.length * pitch.across) / 2;
    for (const [across, cell] of row.entries()) {
      centres.set(cell.key, { x: left + (across + 0.5) * pitch.across, y: margin + down * pitch.down });
    }
  }
  return html`<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img"
    aria-label="${wordsOf(marks).chain.drawing}">
    ${chain.links.map((link) => linkPath(link, { rows, centres }, { tag: `${linkNumbers.get(link.id) ?? 0} · ${spoken(marks, (say) => say.metres(link.lengthM))}`, suspect: suspects.has(link.id) }))}
    ${rows.flat().map((cell) => deviceBox(cell, centres, marks))}
  </svg>`;
}

/** Rows by the longest way from a source; a link over several rows leaves a cell in each. */
function rowsOf(chain: Chain): Cell[][] {
  const depths = new Map<string, number>();
  for (const id of signalOrder(chain)) {
    const feeding = chain.links.filter((link) => link.to.deviceId === id);
    depths.set(id, Math.max(0, ...feeding.map((link) => (depths.get(link.from.deviceId) ?? -1) + 1)));
  }
  const rows: Cell[][] = [];
  const put = (depth: number, cell: Cell): void => {
    for (let at = rows.length; at <= depth; at += 1) rows.push([]);
    rows[depth]?.push(cell);
  };
  for (const device of chain.devices) {
    put(depths.get(device.id) ?? 0, { key: device.id, device, from: [] });
  }
  for (const link of chain.links) {
    const first = depths.get(link.from.deviceId) ?? 0;
    const last = depths.get(link.to.deviceId) ?? 0;
    let previous = link.from.deviceId;
    for (let depth = first + 1; depth < last; depth += 1) {
      const key = passingKey(link, depth);
      put(depth, { key, device: null, from: [previous] });
      previous = key;
    }
    rows[last]?.find((cell) => cell.key === link.to.deviceId)?.from.push(previous);
  }
  return rows;
}

const passingKey = (link: Link, depth: number): string => `${link.id} past ${depth}`;

/** Orders each row by where its signals come from, which leaves few crossings. */
function arranged(rows: readonly Cell[][]): Cell[][] {
  const place = new Map<string, number>();
  return rows.map((row) => {
    const wanted = (cell: Cell, index: number): number => {
      const known = cell.from.flatMap((key) => place.get(key) ?? []);
      return known.length === 0 ? index : known.reduce((sum, at) => sum + at, 0) / known.length;
    };
    const sorted = row
      .map((cell, index) => ({ cell, at: wanted(cell, index) }))
      .sort((one, other) => one.at - other.at)
      .map(({ cell }) => cell);
    for (const [index, cell] of sorted.entries()) place.set(cell.key, index - (sorted.length - 1) / 2);
    return sorted;
  });
}

type Centres = ReadonlyMap<string, { x: number; y: number }>;
type Layout = { readonly rows: readonly Cell[][]; readonly centres: Centres };

function linkPath(
  link: Link,
  { rows, centres }: Layout,
  { tag: words, suspect }: { readonly tag: string; readonly suspect: boolean },
): Html {
  const passing = rows.flatMap((row, depth) => row.filter((cell) => cell.key === passingKey(link, depth)));
  const keys = [link.from.deviceId, ...passing.map((cell) => cell.key), link.to.deviceId];
  const points = keys.flatMap((key) => centres.get(key) ?? []);
  const [first, second] = points;
  if (first === undefined || second === undefined) return html``;
  const curve = points.slice(1).map((to, index) => {
    const from = points[index] ?? to;
    const startY = index === 0 ? from.y + box.height : from.y;
    const middle = (startY + to.y) / 2;
    return `C ${from.x} ${middle}, ${to.x} ${middle}, ${to.x} ${to.y}${index < points.length - 2 ? ` V ${to.y + box.height}` : ''}`;
  });
  const tag = { x: (first.x + second.x) / 2, y: (first.y + box.height + second.y) / 2 };
  return html`<path d="M ${first.x} ${first.y + box.height} ${curve.join(' ')}"${suspectClass(suspect)}/>
    <rect class="tag${suspect ? ' suspect' : ''}" x="${tag.x - 38}" y="${tag.y - 11}" width="76" height="22" rx="11"/>
    <text x="${tag.x}" y="${tag.y + 4}" text-anchor="middle">${words}</text>`;
}

function deviceBox({ key, device }: Cell, centres: Centres, marks: Marks): Html | null {
  const centre = centres.get(key);
  if (device === null || centre === undefined) return null;
  const left = centre.x - box.width / 2;
  const t = wordsOf(marks).chain;
  const suspect = marks.suspects.has(device.id);
  const second = joined([termOf(marks, 'role', device.role), device.model ?? ''], ' · ');
  const third = device.firmware === null ? '' : t.firmware(device.firmware);
  return html`<g><title>${device.name}</title>
    <rect x="${left}" y="${centre.y}" width="${box.width}" height="${box.height}" rx="4"${suspectClass(suspect)}/>
    <text class="name" x="${left + 10}" y="${centre.y + 20}">${short(device.name, suspect ? 19 : 26)}</text>
    ${suspect && html`<text class="small" x="${left + box.width - 10}" y="${centre.y + 20}" text-anchor="end">${t.suspect}</text>`}
    <text class="small" x="${left + 10}" y="${centre.y + 37}">${short(second, 32)}</text>
    <text class="small" x="${left + 10}" y="${centre.y + 52}">${short(third, 32)}</text></g>`;
}

const suspectClass = (suspect: boolean): Html => new Html(suspect ? ' class="suspect"' : '');

const short = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1).trimEnd()}…`;
