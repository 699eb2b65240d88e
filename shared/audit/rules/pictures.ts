import { upstreamOf } from '../../chain/graph.ts';
import { namedLink } from '../../chain/named-place.ts';
import type { Device } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import {
  type LinkFault,
  type Loss,
  overallSentence,
  type WantedOnLink,
  worst,
} from '../../signal/link-budget/index.ts';
import { managesEdid } from './losses.ts';
import { isToldOfBetterPort } from './ports.ts';
import type { ChainContext, LinkContext, Observation, Rule } from './rule.ts';

type Picture = LinkFault & { judged: WantedOnLink };
/** A picture that a link can't carry, for what no rule of its cable or its sockets speaks of. */
type Untold = { at: LinkContext; fault: Picture };

const isPicture = (fault: LinkFault): fault is Picture => fault.judged !== null;

function untold(links: readonly LinkContext[]): Untold[] {
  return links.flatMap((at) => {
    const isToldOfBetter = isToldOfBetterPort(at);
    return at.faults
      .filter(isPicture)
      .filter(({ of }) => remedies[of] !== null && !(of === 'socket' && isToldOfBetter))
      .map((fault) => ({ at, fault }));
  });
}

/**
 * One picture that doesn't go is one fault, on however many links it doesn't: told where it goes least, with the others
 * named. What an EDID keeps out is told where that EDID comes from, each display for itself.
 */
function linkBudget(context: ChainContext): Observation[] {
  const { chain, links } = context;
  const all = untold(links);
  const edids = all.filter((each) => isAtItsOrigin(each, all) && culpritOf(each) === null);
  const groups = new Map<string, Untold[]>();
  for (const each of all.filter(({ fault }) => fault.of !== 'edid')) {
    const key = `${each.fault.of} ${JSON.stringify(each.fault.judged.wanted)}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...edids.map((each) => [each]), ...groups.values()].flatMap((same) => {
    const told = toldOf(same, leadingTo(context));
    if (told === undefined) return [];
    const { of, judged } = told.fault;
    const others = same.filter((each) => each !== told).map(({ at }) => namedLink(chain, at.link));
    const text = textOf(told);
    return [
      {
        severity: of === 'onlyCompressed' ? 'note' : severities[judged.verdict],
        text: others.length === 0 ? text : message('alsoOnLinks', { finding: text, links: others }),
        whatToDo: remedyOf(told),
        cautions: [],
        place: { kind: 'link', linkId: told.at.link.id },
      },
    ];
  });
}

/** The one that goes least, of those on a way to the display with the fault where any is. */
function toldOf(same: readonly Untold[], isOnTheWay: (each: Untold) => boolean): Untold | undefined {
  const onTheWay = same.filter(isOnTheWay);
  const among = onTheWay.length > 0 ? onTheWay : same;
  const judged = worst(among.map(({ fault }) => fault.judged));
  return among.find(({ fault }) => fault.judged === judged);
}

function leadingTo({ chain, displayId }: ChainContext): (each: Untold) => boolean {
  const leading = displayId === null ? null : upstreamOf(chain, displayId).add(displayId);
  return ({ at }) => leading === null || leading.has(at.ends.sink.id);
}

const textOf = ({ at: { named }, fault: { of, judged } }: Untold): Message =>
  of === 'onlyCompressed'
    ? message('formatOnlyCompressed', { format: judged.wanted, link: named, onLink: judged.sentence })
    : overallSentence(named, judged);

const severities = {
  short: 'mustFix',
  reduced: 'shouldFix',
  notOffered: 'shouldFix',
  doubtful: 'shouldFix',
  fits: 'note',
} as const;
/** Null for what has a rule of its own. */
const remedies: Record<LinkFault['of'], Message | null> = {
  cable: null,
  loss: null,
  setting: null,
  socket: message('useFasterPort'),
  edid: message('readEdidAtBothEnds'),
  onlyCompressed: message('checkSourceCompresses'),
  noSuchFormat: message('askForExistingFormat'),
  noLinkCarries: message('askForLess'),
};

function remedyOf({ fault }: Untold): Message {
  const usual = remedies[fault.of] ?? message('askForLess');
  if (fault.of !== 'edid') return usual;
  const last = fault.hands.at(-1)?.did;
  if (last === 'combines') return message('feedDisplaysAlike');
  return last === 'answers' ? message('setInputOrAskForListed') : usual;
}

/** Whether what an EDID keeps out isn't kept out on a link behind this one already. */
const isAtItsOrigin = ({ at, fault }: Untold, all: readonly Untold[]): boolean =>
  fault.of === 'edid' &&
  !all.some(
    (other) =>
      other.fault.of === 'edid' &&
      other.fault.judged.wanted === fault.judged.wanted &&
      other.at.ends.source.id === at.ends.sink.id,
  );

/** The device that limits or replaces the EDID where it need not; null where none does. */
function culpritOf({ at, fault }: Untold): { device: Device; why: 'limits' | 'replaces' } | null {
  const did = fault.of === 'edid' ? fault.hands.at(-1)?.did : undefined;
  const { sink } = at.ends;
  return managesEdid(sink) && (did === 'limits' || did === 'replaces') ? { device: sink, why: did } : null;
}

/** Pictures that devices keep out by the EDID they show, which the rule of EDID management tells of. */
export function keptOut(links: readonly LinkContext[]): Loss[] {
  const all = untold(links);
  return all
    .filter((each) => isAtItsOrigin(each, all))
    .flatMap((each) => {
      const culprit = culpritOf(each);
      const what = [message('lossOfFormat', { format: each.fault.judged.wanted })];
      return culprit === null ? [] : [{ deviceId: culprit.device.id, why: culprit.why, what }];
    });
}

/** What the budget of the whole chain says of each wanted picture. */
export const pictureRules: readonly Rule<ChainContext>[] = [
  { id: 'link-budget', source: message('computedCapacity'), urgentFor: [], check: linkBudget },
];
