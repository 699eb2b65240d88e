import { displaysOf, upstreamOf } from '../../chain/graph.ts';
import { namedLink } from '../../chain/named-place.ts';
import type { Chain, VideoFormat, WantedFormat } from '../../contract/chain.ts';
import { organisationDefaults } from '../../contract/defaults.ts';
import { message, type NamedPlace } from '../../message/index.ts';
import { askedOf } from './asked.ts';
import type {
  BudgetOptions,
  ChainBudget,
  DisplayBudget,
  LinkBudget,
  WantedOnLink,
  WantedOverall,
} from './budget.ts';
import { candidateFormats } from './candidates.ts';
import { goesAtNineGbps, type JudgedRun, judgeRuns, worst } from './judged-run.ts';
import { joinedLosses } from './losses.ts';
import { seenEdids } from './seen-edid.ts';
import { wiringOf, wiringWithout } from './wiring.ts';
import { overallSentence, verdictSentence } from './words.ts';

/**
 * For each link of a chain and each wanted format, whether it fits, by how much, and which element is the narrowest;
 * and over the chain, the best format that fits everywhere.
 *
 * A link carries the least of its source port as set, its cable, its sink port as set, and what the EDID admits that
 * its source sees. What a device makes of the picture is judged on the links behind it. Rates in Gbit/s; headroom as a
 * fraction, -0.24 where 24 % more is needed than is carried. Never throws for a chain of the contract; one with faults is judged as
 * far as its links make sense. Plain data, fit for JSON.
 *
 * @param wantedFormats in the client's order; empty for those that the chain itself names
 */
export function chainBudget(
  chain: Chain,
  wantedFormats: readonly WantedFormat[],
  options: BudgetOptions = {},
): ChainBudget {
  const assumptions = { ...organisationDefaults.budget, ...options.assumptions };
  const { without = null } = options;
  const wiring = without === null ? wiringOf(chain) : wiringWithout(chain, without);
  const judged = judgeRuns(wiring, seenEdids(wiring), assumptions);
  const wanted = wantedFormats.length > 0 ? wantedFormats : chain.wantedFormats;
  const asked = wanted.map((format) => ({ format, runs: askedOf(wiring, format) }));
  const links = judged.map((each) => {
    const here = asked.filter(({ runs }) => runs.has(each.run.link.id)).map(({ format }) => format);
    return linkBudget(wiring.chain, each, here);
  });
  const places = judged.map(({ run }) => namedLink(wiring.chain, run.link));
  const fitting = fittingOn(judged);
  return {
    without,
    links,
    wanted: wanted.map((format) => overall(format, { links, places })),
    displays: displayBudgets(wiring.chain, judged),
    fitting,
    best: fitting[0] ?? null,
    atNineGbps: {
      best: fitting.find(goesAtNineGbps) ?? null,
      lost: fitting.filter((format) => !goesAtNineGbps(format)),
    },
    assumptions,
  };
}

function linkBudget(chain: Chain, judged: JudgedRun, wanted: readonly VideoFormat[]): LinkBudget {
  const { run, seen, elements } = judged;
  const onLink = (format: VideoFormat): WantedOnLink => {
    const all = judged.carries(format).map(judged.judge);
    const verdict = worst(all);
    return {
      wanted: format,
      ...verdict,
      // Several pictures can be on it: each loses its own.
      losses: joinedLosses(all.flatMap(({ losses }) => losses)),
      sentence: verdictSentence(chain, run, elements, verdict),
    };
  };
  return {
    id: run.link.id,
    linkIds: run.linkIds,
    cableLinkId: run.cableLinkId,
    from: run.link.from,
    to: run.link.to,
    name: message('thePlace', { place: namedLink(chain, run.link) }),
    elements,
    seen,
    wanted: wanted.map(onLink),
    fitting: candidateFormats.filter(judged.fits),
  };
}

function overall(
  wanted: VideoFormat,
  { links, places }: { links: readonly LinkBudget[]; places: readonly NamedPlace[] },
): WantedOverall {
  const onLinks = links.flatMap((link) => link.wanted.filter((each) => each.wanted === wanted));
  const decisive = onLinks.length > 0 ? worst(onLinks) : null;
  const link = links.findIndex((each) => decisive !== null && each.wanted.includes(decisive));
  const [linkId, place] = [links[link]?.id, places[link]];
  if (decisive === null || linkId === undefined || place === undefined) {
    const sentence = message('noLinkToJudge', { format: wanted });
    return { wanted, verdict: 'fits', linkId: null, lostAtNineGbps: false, losses: [], sentence };
  }
  const { verdict } = decisive;
  return {
    wanted,
    verdict,
    linkId,
    lostAtNineGbps: verdict === 'fits' && !goesAtNineGbps(wanted),
    losses: joinedLosses(onLinks.flatMap(({ losses }) => losses)),
    sentence: overallSentence(place, decisive),
  };
}

/** Candidates that surely go over all of these runs, along with what devices make on the way. */
const fittingOn = (judged: readonly JudgedRun[]): VideoFormat[] =>
  judged.length === 0
    ? []
    : candidateFormats.filter((format) => judged.every(({ allFit }) => allFit(format)));

const displayBudgets = (chain: Chain, judged: readonly JudgedRun[]): DisplayBudget[] =>
  displaysOf(chain).map(({ id }) => {
    const onTheWay = upstreamOf(chain, id).add(id);
    const leading = judged.filter(({ run }) => onTheWay.has(run.sink.id));
    return {
      displayId: id,
      linkIds: leading.map(({ run }) => run.link.id),
      best: fittingOn(leading)[0] ?? null,
    };
  });
