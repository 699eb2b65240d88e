import { namedPlace, namedPort } from '../../chain/named-place.ts';
import type { Chain } from '../../contract/chain.ts';
import { type Message, message, type NamedPlace } from '../../message/index.ts';
import { maxTmdsCharacterRateMHz, tmdsBitRateGbps } from '../format/index.ts';
import type { WantedOnLink } from './budget.ts';
import type { LinkElement } from './elements.ts';
import type { Loss } from './losses.ts';
import type { Figures, FormatVerdict } from './verdict.ts';
import type { Run } from './wiring.ts';

/** What a technician reads beside one format on one link. */
export function verdictSentence(
  chain: Chain,
  run: Run,
  elements: readonly LinkElement[],
  judged: FormatVerdict,
): Message {
  const { figures, verdict, format, compressed, ratedGbps } = judged;
  if (figures === null) return message('noWayToSend', { format });
  const need = message(figures.way === 'frl' ? 'linkNeedsFixedRate' : 'linkNeeds', {
    need: figures.needGbps,
  });
  const narrowest = elements.find(({ kind }) => kind === figures.narrowest);
  const limit = limitOf(chain, run, { figures, narrowest });
  if (verdict === 'notOffered') {
    const port = namedPort(chain, run.link.from);
    return message('linkNotOffered', { need, port, reasons: judged.refusals });
  }
  if (verdict === 'reduced')
    return message('linkLoses', { need, losses: judged.losses.map((loss) => lossSentence(chain, loss)) });
  if (verdict === 'doubtful' && ratedGbps === null && compressed !== null)
    return message('onlyCompressed', { need, limit, bitsPerPixel: compressed.bitsPerPixel });
  const reasons = narrowest?.doubts ?? [];
  const isExtender = run.link.construction === 'twistedPairExtender';
  if (verdict === 'doubtful' && ratedGbps !== null && reasons.length > 0)
    return message(isExtender ? 'extenderCountedForLess' : 'cableCountedForLess', {
      need,
      rated: ratedGbps,
      reasons,
      counted: figures.capacityGbps,
      headroom: headroomOf(figures),
    });
  if (verdict === 'short' && figures.narrowest === 'cable' && reasons.length > 0)
    return message(isExtender ? 'extenderPassesLess' : 'cablePassesLess', {
      need,
      reasons,
      rate: figures.capacityGbps,
      headroom: headroomOf(figures),
    });
  return message('linkBudget', { need, limit, headroom: headroomOf(figures) });
}

const lossCodes = {
  device: 'lostAtDevice',
  edid: 'lostByEdid',
  limits: 'lostByLimitedEdid',
  replaces: 'lostByReplacedEdid',
  combines: 'lostByCommonEdid',
  bits: 'lostForWantOfBits',
  blanking: 'lostForWantOfBlanking',
} as const satisfies Record<Loss['why'], unknown>;

/** What gets lost at a device, and why. */
export const lossSentence = (chain: Chain, { deviceId, why, what }: Loss): Message =>
  message(lossCodes[why], { device: namedPlace(chain, { kind: 'device', deviceId }), what });

type Narrowest = { figures: Figures; narrowest: LinkElement | undefined };

/** What the narrowest element lets through, as a clause. */
function limitOf(chain: Chain, run: Run, { figures, narrowest }: Narrowest): Message {
  const limit = rateOf(chain, run, { figures, narrowest });
  const isPastTmds = figures.way === 'tmds' && figures.needGbps > tmdsBitRateGbps(maxTmdsCharacterRateMHz);
  return isPastTmds ? message('byTmdsOnly', { limit }) : limit;
}

function rateOf(chain: Chain, { link }: Run, { figures, narrowest }: Narrowest): Message {
  const rate = figures.capacityGbps;
  const isExtender = link.construction === 'twistedPairExtender';
  switch (figures.narrowest) {
    case 'cable':
      return message(isExtender ? 'extenderIsGoodFor' : 'cableIsGoodFor', { rate });
    case 'edid':
      return message('edidAdmits', { port: namedPort(chain, link.from), rate });
    case 'sourcePort':
    case 'sinkPort': {
      const port = namedPort(chain, figures.narrowest === 'sourcePort' ? link.from : link.to);
      return message(narrowest?.setBelowHighest ? 'portIsSetToPass' : 'portPasses', { port, rate });
    }
  }
}

function headroomOf({ headroomGbps, headroomFraction }: Figures): Message {
  if (headroomFraction === null) return message('nothingCarried');
  if (headroomGbps === 0) return message('nothingToSpare');
  const share = Math.abs(headroomFraction);
  return headroomGbps < 0 ? message('rateExceeded', { share }) : message('rateToSpare', { share });
}

/** What a format comes to over the chain: the verdict on the link that settles it. */
export function overallSentence(
  link: NamedPlace,
  { wanted: format, verdict, sentence: onLink }: Pick<WantedOnLink, 'wanted' | 'verdict' | 'sentence'>,
): Message {
  switch (verdict) {
    case 'fits':
      return message('formatFits', { format, tightest: link, onLink });
    case 'doubtful':
      return message('formatDoubtful', { format, link, onLink });
    case 'reduced':
      return message('formatReduced', { format, link, onLink });
    case 'notOffered':
      return message('formatNotOffered', { format, link, onLink });
    case 'short':
      return message('formatTooMuch', { format, link, onLink });
  }
}
