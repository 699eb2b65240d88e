import type { VideoFormat } from '../../shared/contract/chain.ts';

type Encoding = VideoFormat['encoding'];
type Depth = VideoFormat['bitsPerComponent'];
export type Category = 'standard' | 'highSpeed' | 'premiumHighSpeed' | 'ultraHighSpeed';

/** A raster as its standard prints it: active and total pixels and lines; the clock in MHz. */
export type Raster = {
  source: string;
  active: readonly [number, number];
  total: readonly [number, number];
  clockMHz: number;
  refreshHz: number;
  interlaced?: boolean;
};

const cta = (
  vic: number,
  active: Raster['active'],
  total: Raster['total'],
  [clockMHz, refreshHz]: readonly [number, number],
): Raster => ({ source: `CTA-861-H table 1, VIC ${vic}`, active, total, clockMHz, refreshHz });
const dmt = (
  id: string,
  active: Raster['active'],
  total: Raster['total'],
  [clockMHz, refreshHz]: readonly [number, number],
): Raster => ({ source: `VESA DMT 1.0 rev. 13, id ${id}`, active, total, clockMHz, refreshHz });

/** CTA-861-H, tables 1 and 2; VESA DMT 1.0 rev. 13. From memory; the totals give each clock back, which the test checks. */
export const rasters = {
  vga59: cta(1, [640, 480], [800, 525], [25.175, 59.94]),
  sd60: cta(3, [720, 480], [858, 525], [27.027, 60]),
  sd50: cta(18, [720, 576], [864, 625], [27, 50]),
  hd720p60: cta(4, [1280, 720], [1650, 750], [74.25, 60]),
  hd720p50: cta(19, [1280, 720], [1980, 750], [74.25, 50]),
  hd1080i60: { ...cta(5, [1920, 1080], [2200, 1125], [74.25, 60]), interlaced: true },
  hd1080i50: { ...cta(20, [1920, 1080], [2640, 1125], [74.25, 50]), interlaced: true },
  hd24: cta(32, [1920, 1080], [2750, 1125], [74.25, 24]),
  hd25: cta(33, [1920, 1080], [2640, 1125], [74.25, 25]),
  hd30: cta(34, [1920, 1080], [2200, 1125], [74.25, 30]),
  hd48: cta(111, [1920, 1080], [2750, 1125], [148.5, 48]),
  hd50: cta(31, [1920, 1080], [2640, 1125], [148.5, 50]),
  hd60: cta(16, [1920, 1080], [2200, 1125], [148.5, 60]),
  hd100: cta(64, [1920, 1080], [2640, 1125], [297, 100]),
  hd120: cta(63, [1920, 1080], [2200, 1125], [297, 120]),
  uhd24: cta(93, [3840, 2160], [5500, 2250], [297, 24]),
  uhd25: cta(94, [3840, 2160], [5280, 2250], [297, 25]),
  uhd30: cta(95, [3840, 2160], [4400, 2250], [297, 30]),
  uhd48: cta(114, [3840, 2160], [5500, 2250], [594, 48]),
  uhd50: cta(96, [3840, 2160], [5280, 2250], [594, 50]),
  uhd60: cta(97, [3840, 2160], [4400, 2250], [594, 60]),
  uhd100: cta(117, [3840, 2160], [5280, 2250], [1188, 100]),
  uhd120: cta(118, [3840, 2160], [4400, 2250], [1188, 120]),
  dci24: cta(98, [4096, 2160], [5500, 2250], [297, 24]),
  dci50: cta(101, [4096, 2160], [5280, 2250], [594, 50]),
  dci60: cta(102, [4096, 2160], [4400, 2250], [594, 60]),
  wide60: cta(126, [5120, 2160], [5500, 2250], [742.5, 60]),
  wide100: cta(127, [5120, 2160], [6600, 2250], [1485, 100]),
  uhd8k24: cta(194, [7680, 4320], [11_000, 4500], [1188, 24]),
  uhd8k30: cta(196, [7680, 4320], [9000, 4400], [1188, 30]),
  uhd8k50: cta(198, [7680, 4320], [10_800, 4400], [2376, 50]),
  uhd8k60: cta(199, [7680, 4320], [9000, 4400], [2376, 60]),
  uhd8k120: cta(201, [7680, 4320], [8800, 4500], [4752, 120]),
  xga60: dmt('10h', [1024, 768], [1344, 806], [65, 60]),
  sxga60: dmt('23h', [1280, 1024], [1688, 1066], [108, 60]),
  uxga60: dmt('33h', [1600, 1200], [2160, 1250], [162, 60]),
  wuxga60: dmt('44h', [1920, 1200], [2080, 1235], [154, 60]),
  wqxga60: dmt('4Bh', [2560, 1600], [2720, 1646], [268.5, 59.972]),
} as const satisfies Record<string, Raster>;

/** The fixed rates in Gbit/s, or that none carries it as it is. */
type Frl = 9 | 18 | 24 | 32 | 40 | 48 | 'none';

/** Raster, sampling, what comes with it; TMDS character rate in MHz, least fixed rate, least cable. */
export type Row = readonly [
  raster: keyof typeof rasters,
  encoding: Encoding,
  bits: Depth,
  with_: Partial<VideoFormat>,
  tmdsMHz: number,
  frlGbps: Frl,
  cable: Category | 'none',
];

const sdr = {};
const hdr10 = { dynamicRange: 'hdr10', colorimetry: 'bt2020' } as const;
const hlg = { dynamicRange: 'hlg', colorimetry: 'bt2020' } as const;
const dynamic10 = { dynamicRange: 'st2094-10' } as const;
const dynamic40 = { dynamicRange: 'st2094-40', colorimetry: 'bt2020' } as const;
const threeD = { threeD: true } as const;

export const rows: readonly Row[] = [
  ['vga59', 'rgb', 8, sdr, 25.175, 9, 'standard'],
  ['sd60', 'rgb', 8, sdr, 27.027, 9, 'standard'],
  ['sd60', 'rgb', 12, sdr, 40.5405, 9, 'standard'],
  ['sd50', 'ycbcr444', 8, sdr, 27, 9, 'standard'],
  ['hd720p60', 'rgb', 8, sdr, 74.25, 9, 'standard'],
  ['hd720p50', 'ycbcr422', 12, sdr, 74.25, 9, 'standard'],
  ['hd720p60', 'rgb', 10, sdr, 92.8125, 9, 'highSpeed'],
  ['hd720p60', 'rgb', 8, threeD, 148.5, 9, 'highSpeed'],
  ['hd1080i60', 'rgb', 8, sdr, 74.25, 9, 'standard'],
  ['hd1080i50', 'ycbcr422', 12, sdr, 74.25, 9, 'standard'],
  ['hd24', 'rgb', 8, sdr, 74.25, 9, 'standard'],
  ['hd24', 'rgb', 12, hdr10, 111.375, 9, 'highSpeed'],
  ['hd24', 'rgb', 8, threeD, 148.5, 9, 'highSpeed'],
  ['hd25', 'ycbcr422', 10, hlg, 74.25, 9, 'standard'],
  ['hd30', 'rgb', 8, sdr, 74.25, 9, 'standard'],
  ['hd48', 'rgb', 8, sdr, 148.5, 9, 'highSpeed'],
  ['hd50', 'ycbcr422', 10, hlg, 148.5, 9, 'highSpeed'],
  ['hd50', 'rgb', 16, sdr, 297, 9, 'highSpeed'],
  ['hd60', 'rgb', 8, sdr, 148.5, 9, 'highSpeed'],
  ['hd60', 'rgb', 8, threeD, 297, 9, 'highSpeed'],
  ['hd60', 'rgb', 10, hdr10, 185.625, 9, 'highSpeed'],
  ['hd60', 'rgb', 12, dynamic40, 222.75, 9, 'highSpeed'],
  ['hd60', 'rgb', 16, sdr, 297, 9, 'highSpeed'],
  ['hd100', 'rgb', 8, sdr, 297, 9, 'highSpeed'],
  ['hd120', 'rgb', 8, sdr, 297, 9, 'highSpeed'],
  ['hd120', 'rgb', 10, hdr10, 371.25, 18, 'premiumHighSpeed'],
  ['hd120', 'rgb', 12, hdr10, 445.5, 18, 'premiumHighSpeed'],
  ['uhd24', 'rgb', 8, dynamic10, 297, 9, 'highSpeed'],
  ['uhd24', 'rgb', 10, hdr10, 371.25, 18, 'premiumHighSpeed'],
  ['uhd24', 'rgb', 12, hdr10, 445.5, 18, 'premiumHighSpeed'],
  ['uhd24', 'ycbcr422', 12, dynamic40, 297, 9, 'highSpeed'],
  ['uhd24', 'rgb', 16, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd25', 'ycbcr422', 12, hlg, 297, 9, 'highSpeed'],
  ['uhd30', 'rgb', 8, sdr, 297, 9, 'highSpeed'],
  ['uhd30', 'ycbcr444', 10, hdr10, 371.25, 18, 'premiumHighSpeed'],
  ['uhd48', 'rgb', 8, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd50', 'ycbcr420', 8, sdr, 297, 9, 'highSpeed'],
  ['uhd50', 'ycbcr420', 10, hlg, 371.25, 9, 'highSpeed'],
  ['uhd50', 'ycbcr422', 12, hlg, 594, 18, 'premiumHighSpeed'],
  ['uhd50', 'rgb', 10, hlg, 742.5, 24, 'ultraHighSpeed'],
  ['uhd60', 'rgb', 8, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd60', 'rgb', 8, dynamic10, 594, 18, 'premiumHighSpeed'],
  ['uhd60', 'ycbcr444', 8, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd60', 'ycbcr422', 12, hdr10, 594, 18, 'premiumHighSpeed'],
  ['uhd60', 'ycbcr420', 8, sdr, 297, 9, 'highSpeed'],
  ['uhd60', 'ycbcr420', 10, hdr10, 371.25, 18, 'premiumHighSpeed'],
  ['uhd60', 'ycbcr420', 12, dynamic40, 445.5, 18, 'premiumHighSpeed'],
  ['uhd60', 'ycbcr420', 16, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd60', 'rgb', 10, hdr10, 742.5, 24, 'ultraHighSpeed'],
  ['uhd60', 'rgb', 12, hdr10, 891, 24, 'ultraHighSpeed'],
  ['uhd60', 'rgb', 16, sdr, 1188, 32, 'ultraHighSpeed'],
  ['uhd100', 'ycbcr420', 8, sdr, 594, 18, 'premiumHighSpeed'],
  ['uhd100', 'rgb', 10, hlg, 1485, 40, 'ultraHighSpeed'],
  ['uhd120', 'ycbcr420', 10, hdr10, 742.5, 24, 'ultraHighSpeed'],
  ['uhd120', 'ycbcr422', 12, hdr10, 1188, 32, 'ultraHighSpeed'],
  ['uhd120', 'rgb', 8, sdr, 1188, 32, 'ultraHighSpeed'],
  ['uhd120', 'rgb', 10, hdr10, 1485, 40, 'ultraHighSpeed'],
  ['uhd120', 'rgb', 12, hdr10, 1782, 48, 'ultraHighSpeed'],
  ['uhd120', 'rgb', 16, sdr, 2376, 'none', 'none'],
  ['dci24', 'rgb', 12, hdr10, 445.5, 18, 'premiumHighSpeed'],
  ['dci50', 'ycbcr422', 12, hdr10, 594, 18, 'premiumHighSpeed'],
  ['dci60', 'rgb', 8, sdr, 594, 18, 'premiumHighSpeed'],
  ['dci60', 'ycbcr420', 10, hdr10, 371.25, 18, 'premiumHighSpeed'],
  ['wide60', 'rgb', 8, sdr, 742.5, 24, 'ultraHighSpeed'],
  ['wide60', 'ycbcr422', 12, hdr10, 742.5, 24, 'ultraHighSpeed'],
  ['wide100', 'rgb', 10, hdr10, 1856.25, 'none', 'none'],
  ['uhd8k24', 'rgb', 10, hdr10, 1485, 40, 'ultraHighSpeed'],
  ['uhd8k24', 'ycbcr420', 12, hdr10, 891, 24, 'ultraHighSpeed'],
  ['uhd8k30', 'rgb', 8, sdr, 1188, 32, 'ultraHighSpeed'],
  ['uhd8k30', 'ycbcr422', 12, hdr10, 1188, 32, 'ultraHighSpeed'],
  ['uhd8k50', 'ycbcr420', 10, hlg, 1485, 40, 'ultraHighSpeed'],
  ['uhd8k60', 'ycbcr420', 8, sdr, 1188, 32, 'ultraHighSpeed'],
  ['uhd8k60', 'ycbcr420', 10, hdr10, 1485, 40, 'ultraHighSpeed'],
  ['uhd8k60', 'ycbcr420', 12, hdr10, 1782, 48, 'ultraHighSpeed'],
  ['uhd8k60', 'rgb', 10, hdr10, 2970, 'none', 'none'],
  ['uhd8k120', 'ycbcr420', 10, hdr10, 2970, 'none', 'none'],
  ['xga60', 'rgb', 8, sdr, 65, 9, 'standard'],
  ['sxga60', 'rgb', 8, sdr, 108, 9, 'highSpeed'],
  ['uxga60', 'rgb', 8, sdr, 162, 9, 'highSpeed'],
  ['wuxga60', 'rgb', 8, sdr, 154, 9, 'highSpeed'],
  ['wuxga60', 'rgb', 10, sdr, 192.5, 9, 'highSpeed'],
  ['wqxga60', 'rgb', 8, sdr, 268.5, 9, 'highSpeed'],
  ['wqxga60', 'rgb', 10, sdr, 335.625, 9, 'highSpeed'],
];

/** With compressed video: the least fixed rate at the fewest bits a pixel that each encoding is sent with. */
export type CompressedRow = readonly [
  raster: keyof typeof rasters,
  encoding: Encoding,
  bits: Depth,
  with_: Partial<VideoFormat>,
  frlGbps: Frl,
];
export const compressedRows: readonly CompressedRow[] = [
  ['uhd60', 'rgb', 10, hdr10, 9],
  ['uhd100', 'rgb', 8, sdr, 9],
  ['uhd120', 'rgb', 10, hdr10, 18],
  ['uhd120', 'ycbcr420', 10, hdr10, 9],
  ['wide100', 'rgb', 10, hdr10, 18],
  ['uhd8k30', 'rgb', 10, hdr10, 18],
  ['uhd8k50', 'ycbcr422', 12, hlg, 18],
  ['uhd8k60', 'rgb', 10, hdr10, 24],
  ['uhd8k60', 'ycbcr420', 10, hdr10, 18],
  ['uhd8k120', 'rgb', 10, hdr10, 40],
  ['uhd8k120', 'ycbcr420', 10, hdr10, 32],
];
