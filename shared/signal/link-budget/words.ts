import { socketName } from '../../chain/place.ts';
import { formatName, gbps } from '../../chain/signal-mode.ts';
import type { Chain } from '../../contract/chain.ts';
import type { ElementKind, LinkElement } from './elements.ts';
import type { Figures, FormatVerdict } from './verdict.ts';
import type { Run } from './wiring.ts';

/** What a technician reads beside one format on one link. */
export function verdictSentence(
  chain: Chain,
  run: Run,
  elements: readonly LinkElement[],
  judged: FormatVerdict,
): string {
  const { figures, verdict, format } = judged;
  if (figures === null) return `There is no way to send ${formatName(format)}.`;
  const needs = `This link needs ${gbps(figures.needGbps)}${figures.way === 'frl' ? ' of a fixed rate link' : ''}`;
  const narrowest = elements.find(({ kind }) => kind === figures.narrowest);
  const itsName = elementName(chain, run, figures.narrowest);
  const tmdsOnly = figures.way === 'frl' && narrowest?.rated.frl === null ? ', by TMDS only' : '';
  const goodFor = `${itsName} ${isGoodFor(figures, narrowest)}${tmdsOnly}`;
  switch (verdict) {
    case 'fits':
      return `${needs}, ${goodFor}: ${spare(figures)}.`;
    case 'short':
      return `${needs}, ${goodFor}: ${short(figures)}.`;
    case 'notOffered':
      return `${needs}, but the EDID that ${socketName(chain, run.link.from)} sees ${judged.refusals.join(' and ')}.`;
    case 'doubtful':
      return judged.ratedGbps === null
        ? `${needs}. ${capital(goodFor)}: it goes only compressed, to ${judged.compressed?.bitsPerPixel} bits a pixel, if the source can.`
        : `${needs}. ${capital(itsName)} may be good for ${bare(judged.ratedGbps)}, but ${doubts(narrowest)}: count on ${bare(figures.capacityGbps)} (assumed), ${short(figures)}.`;
  }
}

const doubts = (element: LinkElement | undefined): string => element?.doubts.join(' and ') ?? '';

function isGoodFor({ narrowest, capacityGbps }: Figures, element: LinkElement | undefined): string {
  const rate = bare(capacityGbps);
  switch (narrowest) {
    case 'cable':
      return `is good for ${rate}`;
    case 'edid':
      return `admits ${rate}`;
    case 'sourcePort':
    case 'sinkPort':
      return element?.setBelowHighest ? `is set to pass no more than ${rate}` : `passes ${rate}`;
  }
}

/** The element as the subject of a sentence. */
function elementName(chain: Chain, run: Run, kind: ElementKind): string {
  switch (kind) {
    case 'cable':
      return 'the cable';
    case 'edid':
      return `the EDID that ${socketName(chain, run.link.from)} sees`;
    case 'sourcePort':
      return socketName(chain, run.link.from);
    case 'sinkPort':
      return socketName(chain, run.link.to);
  }
}

/** `17.82`, where the unit was said already. */
const bare = (rateGbps: number): string => gbps(rateGbps).replace(' Gbit/s', '');
/** Whole per cent; what rounds to none is still something. */
function percent({ headroomFraction }: Figures): string {
  const whole = Math.round(Math.abs(headroomFraction) * 100);
  return whole === 0 ? 'less than 1 %' : `${whole} %`;
}
const short = (figures: Figures): string => `${percent(figures)} short`;
const spare = (figures: Figures): string =>
  figures.headroomGbps === 0 ? 'nothing to spare' : `${percent(figures)} to spare`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
