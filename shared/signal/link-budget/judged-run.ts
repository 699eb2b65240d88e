import type { VideoFormat } from '../../contract/chain.ts';
import { type FormatNeed, formatNeed, soundFits } from '../format/index.ts';
import { listedTiming } from './admission.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import { candidateFormats } from './candidates.ts';
import type { Capacity } from './capacity.ts';
import { carriedBy } from './carried.ts';
import type { EdidOffer } from './edid-offer.ts';
import { elementsOf, type LinkElement } from './elements.ts';
import { converts, type Loss, type LossContext, lossesOn, plainly } from './losses.ts';
import { type SeenEdid, unknownEdid } from './seen-edid.ts';
import {
  type FormatVerdict,
  judgeFormat,
  limitsOf,
  linkVerdicts,
  surelyFits,
  wayOver,
  withLosses,
} from './verdict.ts';
import type { Run, Wiring } from './wiring.ts';

/** A run with all that is needed to judge formats on it. */
export type JudgedRun = {
  run: Run;
  seen: SeenEdid;
  elements: LinkElement[];
  /** Pictures that can be on the run when this format is wanted; at least one. */
  carries: (wanted: VideoFormat) => VideoFormat[];
  judge: (format: VideoFormat) => FormatVerdict;
  /** What it takes on this run: by the timing that the EDID seen lists for it, where it does. */
  needOf: (format: VideoFormat) => FormatNeed;
  /** Whether it would be judged `fits`. */
  fits: (format: VideoFormat) => boolean;
  /** Whether all that can be on the run when this format is wanted would be. */
  allFit: (wanted: VideoFormat) => boolean;
};

export function judgeRuns(
  wiring: Wiring,
  seen: ReadonlyMap<string, SeenEdid>,
  assumptions: BudgetAssumptions,
): JudgedRun[] {
  const carried = carriedBy(wiring);
  const needOf = once(needOfFormat);
  const fed = new Set(wiring.runs.map(({ sink }) => sink.id));
  const feeding = new Set(wiring.runs.map(({ source }) => source.id));
  const convertsAt = conversions(wiring);
  return wiring.runs.map((run) => {
    const seenHere = seen.get(run.link.id) ?? unknownEdid;
    const elements = elementsOf(run, seenHere.offer, assumptions);
    const { wanted, asAsked, made } = carried.get(run.link.id) ?? { wanted: true, asAsked: true, made: [] };
    const limits = limitsOf(elements, seenHere.offer);
    const needHere = (format: VideoFormat): FormatNeed => asListed(needOf(format), seenHere.offer);
    const ends = { isStart: !fed.has(run.source.id), isEnd: !feeding.has(run.sink.id), convertsAt };
    const lossesOf = (format: VideoFormat, isOffered: boolean): Loss[] => {
      const isSoundLost = losesSound(needHere(format), limits.rated.whole);
      return lossesOn(run, format, { seen: seenHere, isOffered, isSoundLost, ...ends });
    };
    const judge = once((format) => {
      const verdict = judgeFormat(needHere(format), limits);
      return withLosses(verdict, lossesOf(format, verdict.refusals.length === 0));
    });
    const fits = once(
      (format) => surelyFits(needHere(format), limits) && lossesOf(format, true).length === 0,
    );
    const madeFit = made.every(fits);
    return {
      run,
      seen: seenHere,
      elements,
      carries: (format) => (wanted ? [asAsked ? format : plainly(format), ...made] : made),
      needOf: needHere,
      judge,
      fits,
      allFit: (format) => madeFit && (!wanted || fits(asAsked ? format : plainly(format))),
    };
  });
}

/** Whether the blanking has no room for the sound that is asked for, on the way that the picture goes. */
function losesSound(need: FormatNeed, whole: Capacity): boolean {
  const { timing, format } = need;
  const way = format.sound === undefined ? null : wayOver(need, whole);
  return (
    way !== null && format.sound !== undefined && !soundFits(timing, format, { sound: format.sound, way })
  );
}

/** Whether a device converts, and whether it keeps HDR out of the EDID that it shows. */
function conversions({ chain }: Wiring): LossContext['convertsAt'] {
  const known = new Map(
    chain.devices.map((device) => {
      const { edidHandling } = device;
      const dropsHdr = edidHandling.kind === 'limits' && edidHandling.dropsHdr;
      return [device.id, { converts: converts(device), dropsHdr }];
    }),
  );
  return (deviceId) => known.get(deviceId) ?? { converts: false, dropsHdr: false };
}

/** Remembers what was worked out for a format, by the object that it is. */
function once<Result>(work: (format: VideoFormat) => Result): (format: VideoFormat) => Result {
  const known = new Map<VideoFormat, Result>();
  return (format) => {
    const found = known.get(format) ?? work(format);
    known.set(format, found);
    return found;
  };
}

const candidateNeeds = new Map(candidateFormats.map((format) => [format, formatNeed(format)]));
const needOfFormat = (format: VideoFormat): FormatNeed => candidateNeeds.get(format) ?? formatNeed(format);

/** Outside the video codes the EDID's own timing goes before the one found by size and rate. */
function asListed(need: FormatNeed, offer: EdidOffer | null): FormatNeed {
  if (offer === null || need.source.kind === 'cta861') return need;
  const timing = listedTiming(offer, need.format);
  return timing === null ? need : formatNeed(need.format, { timing, source: { kind: 'edid' } });
}

const nineGbpsMHz = 300;
/** Whether a format goes over TMDS limited to 300 MHz. */
export function goesAtNineGbps(format: VideoFormat): boolean {
  const { tmds } = needOfFormat(format);
  return tmds !== null && tmds.characterRateMHz <= nineGbpsMHz;
}

/** The worst of some verdicts, and of equals the one with the least headroom. */
export function worst<Verdict extends FormatVerdict>(verdicts: readonly Verdict[]): Verdict {
  const badness = ({ verdict }: Verdict): number => linkVerdicts.indexOf(verdict);
  const headroom = ({ figures }: Verdict): number => figures?.headroomFraction ?? Number.NEGATIVE_INFINITY;
  return verdicts.reduce((one, other) => {
    if (badness(one) !== badness(other)) return badness(one) > badness(other) ? one : other;
    return headroom(one) <= headroom(other) ? one : other;
  });
}
