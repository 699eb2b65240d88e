import { spawnSync } from 'node:child_process';
import type { CtaSummary, EdidSummary, TimingSummary } from '../../shared/signal/edid/index.ts';

/** What the reference program can say of an EDID: our summary without the verdicts that are our own. */
export type ReferenceFacts = Omit<EdidSummary, 'ok' | 'problems'>;

/** The reference program's text for one EDID; null where it refuses to read it. */
export function referenceOutput(bytes: Uint8Array): string | null {
  const run = spawnSync('edid-decode', ['--skip-hex-dump', '--skip-sha', '-'], {
    input: bytes,
    encoding: 'latin1',
    maxBuffer: 1 << 28,
  });
  return run.status === 0 && run.stdout.includes('Block 0') ? run.stdout : null;
}

/** What the reference program finds against the standards; warnings left out. */
export function referenceFailures(bytes: Uint8Array): string[] {
  const run = spawnSync('edid-decode', ['--check', '--skip-hex-dump', '--skip-sha', '-'], {
    input: bytes,
    encoding: 'latin1',
  });
  const [, failures = ''] = run.stdout.split(/^Failures:$/m);
  return failures.split('\n').filter((line) => line.startsWith('  '));
}

type Section = { title: string; body: string[] };

const numberOr = (text: string | undefined): number | null => (text === undefined ? null : Number(text));

/** The first match of a pattern's first group, or null. */
const first = (text: string, pattern: RegExp): string | null => pattern.exec(text)?.[1] ?? null;
const firstNumber = (text: string, pattern: RegExp): number | null => numberOr(pattern.exec(text)?.[1]);

/** Blocks by their heading, without the separators between them. */
function blocksOf(output: string): Section[] {
  return output
    .split(/^(?=Block \d+, )/m)
    .filter((part) => part.startsWith('Block '))
    .map((part) => {
      const [title = '', ...body] = part.split('\n');
      return { title, body };
    });
}

/** Remarks that the program sets as far left as its headings. */
const remarks = /^ {2}Non-zero SCDB reserved fields!/;

/** Data blocks of a CTA-861 block: lines indented by two are headings, deeper ones their content. */
function sectionsOf(body: readonly string[]): Section[] {
  const sections: Section[] = [];
  for (const line of body) {
    if (/^ {2}\S/.test(line) && !remarks.test(line)) sections.push({ title: line.trim(), body: [] });
    else sections.at(-1)?.body.push(line);
  }
  return sections;
}

const timingLine = /^ {4}DTD +\d+: +(\d+)x(\d+)(i?) +(\S+) Hz +\S+ +\S+ kHz +(\S+) MHz/;

function timingOf(line: string): TimingSummary | null {
  const found = timingLine.exec(line);
  if (!found) return null;
  const [, width, height, interlaced, rate, clock] = found;
  const refreshHz = Number(rate);
  return {
    widthPx: Number(width),
    heightPx: Number(height),
    interlaced: interlaced === 'i',
    refreshHz: Number.isFinite(refreshHz) ? refreshHz : null,
    pixelClockKHz: Math.round(Number(clock) * 1000),
  };
}

/** `VIC  16: …` or `Unknown (VIC 220)`; a map naming a reserved code says `Unknown (VIC   0)`. */
function vicsOf(body: readonly string[]): { vic: number; native: boolean }[] {
  return body.flatMap((line) => {
    const found = /^ {4}(?:VIC +(\d+):|Unknown \(VIC +(\d+)\))/.exec(line);
    return found ? [{ vic: Number(found[1] ?? found[2]), native: line.endsWith('(native)') }] : [];
  });
}

const inSections = (sections: readonly Section[], title: RegExp): Section[] =>
  sections.filter((section) => title.test(section.title));

/** Lists join the extension blocks in order; a later block adds what is new. */
function union<T>(lists: readonly T[][]): T[] {
  const seen = new Set<string>();
  return lists.flatMap((list) => {
    const fresh = list.filter((item) => !seen.has(JSON.stringify(item)));
    for (const item of list) seen.add(JSON.stringify(item));
    return fresh;
  });
}

function hdmiOf(all: readonly Section[]): CtaSummary['hdmi'] {
  const [section] = inSections(all, /\(HDMI\), OUI 00-0C-03/);
  if (!section) return null;
  const text = section.body.join('\n');
  return {
    physicalAddress: first(text, /Source physical address: (\S+)/),
    maxTmdsClockMHz: firstNumber(text, /Maximum TMDS clock: (\d+) MHz/),
    deepColor: {
      dc30: text.includes('DC_30bit'),
      dc36: text.includes('DC_36bit'),
      dc48: text.includes('DC_48bit'),
      y444: text.includes('DC_Y444'),
    },
    hdmiVics: [],
  };
}

const hdmiVicsOf = (sections: readonly Section[]): number[] =>
  inSections(sections, /\(HDMI\), OUI 00-0C-03/)
    .flatMap(({ body }) => body)
    .flatMap((line) => [/HDMI VIC (\d+)/.exec(line)?.[1] ?? []].flat().map(Number));

/** `3 and 6 Gbps per lane on 3 lanes, 6, 8 and 10 Gbps on 4 lanes`: the last figures are the highest. */
function frlOf(text: string): { lanes: number; gbpsPerLane: number } | null {
  const found = /^ {4}Max Fixed Rate Link: (.*)$/m.exec(text)?.[1];
  if (!found || found.startsWith('Unknown')) return null;
  const figures = /(\d+) Gbps(?: per lane)? on (\d) lanes$/.exec(found);
  return figures ? { lanes: Number(figures[2]), gbpsPerLane: Number(figures[1]) } : null;
}

function forumOf(all: readonly Section[]): CtaSummary['hdmiForum'] {
  const [section] = inSections(all, /\(HDMI Forum\), OUI C4-5D-D8|^HDMI Forum Sink Capability/);
  const text = section?.body.join('\n') ?? '';
  const version = firstNumber(text, /Version: (\d+)/);
  if (version === null) return null;
  const deep = (bits: number) => text.includes(`${bits}-bits/component Deep Color 4:2:0`);
  return {
    version,
    maxTmdsCharacterRateMHz: firstNumber(text, /Maximum TMDS Character Rate: (\d+) MHz/),
    scdc: text.includes('SCDC Present'),
    deepColor420: { dc30: deep(10), dc36: deep(12), dc48: deep(16) },
    frl: frlOf(text),
    allm: text.includes('Supports Auto Low-Latency Mode'),
    vrrMinHz: firstNumber(text, /VRRmin: (\d+) Hz/),
    vrrMaxHz: firstNumber(text, /VRRmax: (\d+) Hz/),
    dsc: text.includes('Supports VESA DSC 1.2a compression'),
  };
}

/** Lines of six spaces between two headings of four. */
function linesUnder(body: readonly string[], heading: string): string[] {
  const from = body.findIndex((line) => line.trim() === heading);
  if (from < 0) return [];
  const rest = body.slice(from + 1);
  const to = rest.findIndex((line) => !line.startsWith('      '));
  return rest.slice(0, to < 0 ? rest.length : to).map((line) => line.trim());
}

const eotfHeading = 'Electro optical transfer functions:';

function hdrOf(all: readonly Section[]): CtaSummary['hdrStatic'] {
  const sections = inSections(all, /^HDR Static Metadata Data Block/);
  const [section] = sections;
  if (!section) return null;
  const text = section.body.join('\n');
  const luminance = (name: string) => firstNumber(text, new RegExp(`${name} luminance: \\d+ \\((\\S+) cd`));
  return {
    eotfs: union(sections.map(({ body }) => linesUnder(body, eotfHeading))),
    maxLuminanceCdM2: luminance('content max'),
    maxFrameAverageCdM2: luminance('max frame-average'),
    minLuminanceCdM2: luminance('min'),
  };
}

function audioOf(sections: readonly Section[]): CtaSummary['audio'] {
  const formats: CtaSummary['audio'] = [];
  for (const line of inSections(sections, /^Audio Data Block:/).flatMap(({ body }) => body)) {
    const format = /^ {4}(\S.*):$/.exec(line)?.[1];
    if (format) formats.push({ format, channels: null, sampleRatesKHz: [] });
    const last = formats.at(-1);
    if (!last) continue;
    last.channels = firstNumber(line, /Max channels: (\d+)/) ?? last.channels;
    const rates = first(line, /sample rates \(kHz\): (.*)$/);
    if (rates) last.sampleRatesKHz = rates.split(' ').map(Number);
  }
  return formats;
}

function ctaOf(blocks: readonly Section[]): CtaSummary | null {
  const carriers = blocks.filter(
    ({ title, body }) =>
      title.includes('CTA-861 Extension Block') ||
      body.some((line) => line.includes('CTA-861 DisplayID Data Block')),
  );
  const heads = carriers.filter(({ title }) => title.includes('CTA-861')).flatMap(({ body }) => body);
  const byExtension = carriers.map(({ body }) => sectionsOf(body));
  const all = byExtension.flat();
  if (carriers.length === 0) return null;
  const head = heads.join('\n');
  const vics = (title: RegExp) =>
    union(byExtension.map((sections) => inSections(sections, title).flatMap(({ body }) => vicsOf(body))));
  const allVideo = vics(/^Video Data Block:/);
  const everyVic = inSections(all, /^Video Data Block:/).flatMap(({ body }) =>
    vicsOf(body).map(({ vic }) => vic),
  );
  const mapped = union(
    inSections(all, /^YCbCr 4:2:0 Capability Map/).map(({ body }) =>
      body.some((line) => line.includes('All VDB SVDs')) ? everyVic : vicsOf(body).map(({ vic }) => vic),
    ),
  );
  const hdmi = hdmiOf(all);
  return {
    revision: firstNumber(head, /Revision: (\d+)/),
    underscan: head.includes('  Underscans IT Video Formats by default'),
    basicAudio: head.includes('  Basic audio support'),
    ycbcr444: head.includes('  Supports YCbCr 4:4:4'),
    ycbcr422: head.includes('  Supports YCbCr 4:2:2'),
    vics: allVideo,
    ycbcr420Vics: union(
      byExtension.map((sections) =>
        inSections(sections, /^YCbCr 4:2:0 Video Data Block/).flatMap(({ body }) =>
          vicsOf(body).map(({ vic }) => vic),
        ),
      ),
    ),
    ycbcr420CapabilityVics: mapped,
    hdmi: hdmi && { ...hdmi, hdmiVics: union(byExtension.map(hdmiVicsOf)) },
    hdmiForum: forumOf(all),
    colorimetry: union(
      inSections(all, /^Colorimetry Data Block/).map(({ body }) =>
        body.filter((line) => line.startsWith('    ')).map((line) => line.trim()),
      ),
    ),
    hdrStatic: hdrOf(all),
    audio: union(byExtension.map(audioOf)),
  };
}

/** Reads the reference program's text into the shape of our summary. */
export function factsFromReference(output: string): ReferenceFacts {
  const blocks = blocksOf(output);
  const head = blocks[0]?.body.join('\n') ?? '';
  const timings = blocks.flatMap(({ body }) => body.flatMap((line) => timingOf(line) ?? []));
  return {
    version: first(output, /EDID Structure Version & Revision: (\S+)/),
    manufacturer: first(head, /Manufacturer: (\S+)/),
    productCode: firstNumber(head, /Model: (\d+)/),
    serialNumber: firstNumber(head, /^ {4}Serial Number: (\d+)/m),
    productName: first(output, /Display Product Name: '(.*)'$/m),
    productSerial: first(output, /Display Product Serial Number: '(.*)'$/m),
    week: firstNumber(head, /Made in: week (\d+)/),
    year: firstNumber(head, /Made in: (?:week \d+ of )?(\d+)/),
    modelYear: firstNumber(head, /Model year: (\d+)/),
    blockCount: blocks.length,
    checksumsValid: !output.includes('(should be '),
    preferredTiming: timings[0] ?? null,
    detailedTimings: timings,
    cta: ctaOf(blocks),
  };
}
