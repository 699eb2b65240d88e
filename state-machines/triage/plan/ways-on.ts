import type { Offer } from '../../../shared/contract/plan.ts';
import type { WayOn } from '../../../shared/contract/triage.ts';
import { termsIn } from '../../../shared/isolation/decision.ts';
import { faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { type Plan, planNext } from '../../../shared/isolation/index.ts';
import { message } from '../../../shared/message/message.ts';
import { followUpDays } from '../rules/choices.ts';
import { type Asked, inputOf } from './asked.ts';
import type { Step } from './fill-in.ts';
import { offering } from './offer.ts';
import { escalateOffer } from './stages/hand-over.ts';
import { type Choice, testOffers, testsOf } from './tests.ts';

/** Minutes of testing that fit into a visit's day; assumed. */
const minutesPerDay = 360;

/** Whether the client has said in this round that testing goes on although it may cost more than it brings. */
export const goesOnAnyway = ({ record }: Asked): boolean =>
  record.choices.findLast(({ round }) => round === record.round)?.way === 'goOn';

/** Testing on one case is given up after as many days of visits at the latest, and it is handed on all the same; assumed. */
const longestDays = 5;

/** The tests that there are, though handing the case on would cost less. */
export function testsAtAnyCost(asked: Asked): Choice {
  const input = inputOf(asked, asked.changes);
  const plan = planNext({ ...input, terms: { ...input.terms, escalationMin: longestDays * minutesPerDay } });
  return { plan, tests: testsOf(asked, plan) };
}

type Ways = { offered: WayOn[]; offers: Offer[] };
/** A way, and the steps that begin it once it is chosen. */
type Begun = { way: WayOn; begin: Offer };

/**
 * The ways on where what is left to test costs more than it may bring: going on all the same, replacing what is
 * suspected, handing the case on. Each is an offer that writes down the client's choice and begins it.
 */
export function waysOn(asked: Asked, { plan }: Choice): Ways {
  const ways = [...goingOn(asked, plan), ...replacing(plan), handingOver(asked)];
  const offered = ways.map(({ way }) => way);
  const offers = ways.map(({ way, begin }) => {
    const choose: Step = { type: 'recordChoice', way: way.way, offered };
    const steps = [choose, ...(begin.steps as readonly Step[])];
    return { ...offering(steps, { text: begin.text }), test: begin.test };
  });
  return { offered, offers };
}

function goingOn(asked: Asked, { suspects }: Plan): Begun[] {
  if (goesOnAnyway(asked)) return [];
  const { tests } = testsAtAnyCost(asked);
  const [[test], [begin]] = [tests.views, testOffers(asked, tests)];
  if (test === undefined || begin === undefined) return [];
  const outside = suspects.find(({ place }) => place === null)?.probability ?? 0;
  const minutes = test.expectedMin;
  const sureness = (1 - outside) * termsIn(asked.table ?? faultTable).stopAt;
  const days = Math.floor(minutes / minutesPerDay);
  return [{ way: { way: 'goOn', minutes, days, sureness, change: null }, begin }];
}

function replacing({ advice }: Plan): Begun[] {
  const repair = advice.kind === 'escalate' ? advice.repairs.order[0] : undefined;
  if (repair === undefined) return [];
  const { kind, target, minutes, probability: sureness } = repair;
  const text = message('replaceOnSuspicionHere', { what: repair.text });
  return [
    {
      way: { way: 'replace', minutes, days: followUpDays, sureness, change: { kind, target } },
      begin: offering({ type: 'replaceOnSuspicion', place: target }, { text }),
    },
  ];
}

function handingOver({ record, table = faultTable }: Asked): Begun {
  const figure = (name: 'minutes' | 'days' | 'sureness') => figureOf(table.planning.handOver, name);
  return {
    way: {
      way: 'handOver',
      minutes: figure('minutes'),
      days: figure('days'),
      sureness: figure('sureness'),
      change: null,
    },
    begin: escalateOffer(record),
  };
}
