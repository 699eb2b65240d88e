import type { Message } from '../../message/index.ts';
import { aspectRatioOf, type BaseBlock } from './base/base-block.ts';
import type { Descriptor } from './base/descriptors.ts';
import { type SinkCapabilities, type SinkLatency, sinkCapabilities } from './capabilities.ts';
import type { DecodedEdid } from './decode.ts';
import type { DisplayIdBlock } from './displayid/extension.ts';
import { dataBlocks, descriptors, firstText } from './facts.ts';
import type { SinkFormat } from './formats.ts';
import type { Edid, ExtensionBlock } from './tree.ts';
import {
  audioName,
  encodingNamesWithDepths,
  eotfNames,
  formatName,
  frlName,
  tmdsRateName,
} from './wording.ts';

type Row = readonly [label: string, value: string | null];

const labelWidth = 22;
const lineWidth = 100;

/** One label and its value; long lists go on below, aligned. Rows without a value are left out. */
function lines(rows: readonly Row[]): string[] {
  return rows.flatMap(([label, value]) => {
    if (value === null || value === '') return [];
    const wrapped = wrap(value, lineWidth - labelWidth);
    return wrapped.map((part, i) => `  ${(i === 0 ? label : '').padEnd(labelWidth)}${part}`);
  });
}

function wrap(text: string, width: number): string[] {
  const wrapped: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      wrapped.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...wrapped, line];
}

const joined = (items: readonly string[]): string | null => (items.length > 0 ? items.join(', ') : null);

function madeText({ manufacture }: BaseBlock): string {
  if (manufacture.kind === 'modelYear') return `model year ${manufacture.year}`;
  return manufacture.week === null ? `${manufacture.year}` : `${manufacture.year}, week ${manufacture.week}`;
}

function screenText({ screen }: BaseBlock): string | null {
  if (screen.kind === 'size') return `${screen.widthCm} x ${screen.heightCm} cm`;
  return screen.kind === 'aspect' ? `${aspectRatioOf(screen).toFixed(2)}:1, size not stated` : null;
}

function inputText({ input }: BaseBlock): string {
  if (input.kind === 'analog') return 'analog';
  if (input.kind === 'digitalBefore14') return 'digital';
  const depth = input.bitsPerColour === null ? '' : `, ${input.bitsPerColour} bits a colour`;
  return `digital${input.interface === 'undefined' ? '' : ` (${input.interface})`}${depth}`;
}

function rangeText(slots: readonly Descriptor[]): string | null {
  const slot = slots.find(({ kind }) => kind === 'rangeLimits');
  if (slot?.kind !== 'rangeLimits') return null;
  const { minVerticalHz, maxVerticalHz, minHorizontalKHz, maxHorizontalKHz, maxPixelClockMHz } = slot.limits;
  const clock = maxPixelClockMHz > 0 ? `, to ${maxPixelClockMHz} MHz` : '';
  return `${minVerticalHz} to ${maxVerticalHz} Hz, ${minHorizontalKHz} to ${maxHorizontalKHz} kHz${clock}`;
}

const identityRows = (edid: Edid): Row[] => [
  ['Maker and product', `${edid.base.manufacturer} ${edid.base.productCode}`],
  ['Name', firstText(edid, 'productName')],
  [
    'Serial',
    joined([firstText(edid, 'productSerial') ?? '', `${edid.base.serialNumber || ''}`].filter(Boolean)),
  ],
  ['Made', madeText(edid.base)],
  ['EDID', `${edid.base.version}.${edid.base.revision}`],
  ['Input', inputText(edid.base)],
  ['Picture', screenText(edid.base)],
  ['Gamma', edid.base.gamma === null ? null : edid.base.gamma.toFixed(2)],
  ['Range limits', rangeText(descriptors(edid))],
];

const sourceText = ({ source }: SinkFormat): string => {
  switch (source.kind) {
    case 'vic':
      return source.native ? `VIC ${source.vic}, native` : `VIC ${source.vic}`;
    case 'hdmiVic':
      return `HDMI VIC ${source.hdmiVic}`;
    case 'rid':
      return `RID ${source.rid}`;
    case 'detailed':
      return source.block === 'base' ? 'detailed' : 'detailed, CTA-861';
    case 'displayId':
      return 'DisplayID';
    case 'bySize':
      return 'by size';
  }
};

function formatLine(format: SinkFormat): string {
  const notes = { no: '', too: ', 4:2:0 too', only: ', 4:2:0 only' }[format.in420];
  const clock = `${(format.timing.pixelClockKHz / 1000).toFixed(3)} MHz`.padStart(13);
  return `  ${formatName(format.timing).padEnd(labelWidth)}${clock}  ${sourceText(format)}${notes}`;
}

function luminanceText({ luminance: { max, maxFrameAverage, min } }: SinkCapabilities): string | null {
  const parts: [string, number | null, number][] = [
    ['peak', max, 0],
    ['frame average', maxFrameAverage, 0],
    ['black', min, 4],
  ];
  return joined(
    parts.flatMap(([name, value, digits]) =>
      value === null ? [] : [`${name} ${value.toFixed(digits)} cd/m²`],
    ),
  );
}

const isDisplayPort = ({ base: { input } }: Edid): boolean =>
  input.kind === 'digital' && input.interface === 'DisplayPort';

/** What the display is connected by, as far as its EDID says. */
function linkText(edid: Edid, sink: SinkCapabilities): string {
  if (edid.base.input.kind === 'analog') return 'analog';
  if (sink.hdmi) return 'HDMI';
  return isDisplayPort(edid) ? 'DisplayPort' : 'DVI, or HDMI taken for it: RGB of 8 bits, no audio';
}

/** False where the display is reached over a link of another kind, of which rates and depths of TMDS say nothing. */
const hasTmds = (edid: Edid, sink: SinkCapabilities): boolean =>
  edid.base.input.kind !== 'analog' && (sink.hdmi || !isDisplayPort(edid));

const tmdsText = (sink: SinkCapabilities): string =>
  tmdsRateName(sink.maxTmdsCharacterRateMHz) + (sink.tmdsRateStated ? '' : ', not stated');

function compressionText({ compression }: SinkCapabilities): string | null {
  if (compression === null) return null;
  const { maxRate, maxSlices, maxSliceClockMHz, maxLineBytes, bitsPerComponent, native420 } = compression;
  const depths = [8, ...bitsPerComponent].join('/');
  return [
    `to ${frlName(maxRate)}`,
    `${maxSlices} slices of ${maxSliceClockMHz} MHz`,
    `${maxLineBytes} bytes a line`,
    `${depths} bit`,
    ...(native420 ? ['4:2:0'] : []),
  ].join(', ');
}

const ms = (value: number | null): string => (value === null ? 'not stated' : `${value} ms`);

function latencyText({ latency }: SinkCapabilities): string | null {
  if (latency === null) return null;
  const one = ({ videoMs, audioMs }: SinkLatency) => `picture ${ms(videoMs)}, sound ${ms(audioMs)}`;
  const { progressive, interlaced } = latency;
  return interlaced === null ? one(progressive) : `${one(progressive)}; interlaced ${one(interlaced)}`;
}

function rangeOfRates({ refreshRange: range }: SinkCapabilities): string | null {
  if (range === null) return null;
  const seamless = range.seamless === null ? '' : range.seamless ? ', seamless' : ', not seamless';
  return `${range.minHz} to ${range.maxHz} Hz${seamless}`;
}

const tilingText = ({ tiling }: SinkCapabilities): string | null =>
  tiling &&
  `${tiling.columns} x ${tiling.rows} tiles of ${tiling.widthPx} x ${tiling.heightPx}, this one ${tiling.column + 1}, ${tiling.row + 1}`;

const capabilityRows = (edid: Edid, sink: SinkCapabilities): Row[] => [
  ['Link', linkText(edid, sink)],
  ['TMDS', hasTmds(edid, sink) ? tmdsText(sink) : null],
  ['Fixed rate link', sink.frl && frlName(sink.frl)],
  ['Compression', compressionText(sink)],
  ['Depths', hasTmds(edid, sink) ? joined(encodingNamesWithDepths(sink.depths)) : null],
  ['Transfer functions', joined(sink.eotfs.map((eotf) => eotfNames[eotf]))],
  ['Luminance', luminanceText(sink)],
  ['Dynamic metadata', joined(sink.dynamicMetadataTypes.map((type) => `type ${type}`))],
  ['Vendor video', joined(sink.vendorVideoOuis.map((oui) => `OUI ${oui}`))],
  ['Colorimetry', joined(sink.colorimetry)],
  ['Audio', joined([...(sink.basicAudio ? ['basic audio'] : []), ...sink.audio.map(audioName)])],
  ['Loudspeakers', joined(sink.speakers)],
  ['Control channel', sink.scdc ? 'SCDC' : null],
  ['Low latency', sink.allm ? 'automatic low-latency mode' : null],
  ['Variable refresh', sink.vrr && `${sink.vrr.minHz} to ${sink.vrr.maxHz ?? 'the highest'} Hz`],
  ['Media switching', sink.qms ? 'quick media switching' : null],
  ['Rates followed', rangeOfRates(sink)],
  ['Latency', latencyText(sink)],
  ['3D', sink.threeD ? 'there' : null],
  ['Tiles', tilingText(sink)],
  ['CEC address', sink.physicalAddress],
];

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

function displayIdBlockText(block: DisplayIdBlock): string {
  switch (block.kind) {
    case 'product':
      return `product ${block.product.productId || block.product.productCode}`;
    case 'timings':
      return `${counted(block.timings.length, 'timing')} of type ${block.type}`;
    case 'cta':
      return 'CTA-861 data';
    case 'unknown':
      return `block ${block.tag.toString(16).padStart(2, '0')}h`;
  }
}

function extensionText(extension: ExtensionBlock): string {
  switch (extension.kind) {
    case 'cta':
      return `CTA-861 revision ${extension.revision}, ${counted(extension.dataBlocks.length, 'data block')}`;
    case 'displayId': {
      const blocks = extension.blocks.map(displayIdBlockText);
      return `DisplayID ${extension.version}.${extension.revision}: ${joined(blocks) ?? 'empty'}`;
    }
    case 'blockMap':
      return 'block map';
    case 'other':
      return `extension ${extension.tag.toString(16).padStart(2, '0')}h, not read`;
  }
}

const blockRows = (edid: Edid): Row[] => {
  const unread = dataBlocks(edid).flatMap((block) =>
    block.kind === 'vendor' ? [`vendor block of OUI ${block.oui}`] : [],
  );
  return [
    ...edid.extensions.map((extension, i): Row => [`Block ${i + 1}`, extensionText(extension)]),
    ['Kept as they are', joined(unread)],
  ];
};

const section = (title: string, body: readonly string[]): string[] =>
  body.length > 0 ? [title, ...body, ''] : [];

/**
 * A decoded EDID for a person: what the display is, what it takes, where it says so, and what is wrong with it.
 *
 * @param inWords puts a message into a sentence
 */
export function readableText(
  { edid, problems, blockCount, checksumsValid }: DecodedEdid,
  inWords: (said: Message) => string,
): string {
  const faults = problems.map(
    ({ severity, block, offset, text }) => `  ${severity}, block ${block}, byte ${offset}: ${inWords(text)}`,
  );
  const sink = edid && sinkCapabilities(edid);
  const checks = `${counted(blockCount, 'block')}, checksums ${checksumsValid ? 'right' : 'wrong'}`;
  return [
    ...section('Problems', faults),
    ...section('Display', edid ? lines(identityRows(edid)) : []),
    ...section('Takes', edid && sink ? lines(capabilityRows(edid, sink)) : []),
    ...section('Formats', sink ? sink.formats.map(formatLine) : []),
    ...section('Blocks', [`  ${checks}`, ...(edid ? lines(blockRows(edid)) : [])]),
  ].join('\n');
}
