import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import type { ChangeRecord, TriageRecord } from '../../../../shared/contract/triage.ts';
import { changeKinds } from '../../../../shared/contract/triage-names.ts';
import { changeCatalogue } from '../../../../shared/isolation/change-catalogue.ts';
import { assumedRatePerHour, seenIn, visitAtMostMin } from '../../../../shared/isolation/index.ts';
import { looksUntilSure } from '../../../../shared/isolation/retest-statistics.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import { minutesCounted } from '../../counting.ts';
import {
  changesOfRound,
  changeToConfirm,
  keptCure,
  occurrencesIn,
  runningWatch,
  watchesFor,
} from '../../record.ts';
import { whyNoProof } from '../../rules/culprit.ts';
import type { Asked } from '../asked.ts';
import { baselineOf } from '../case-of.ts';
import { knownWrong } from '../known-wrong.ts';
import { askingMin, settingOffers, witnessOffers } from '../looking.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { rateOf } from '../over-days.ts';
import { isOfOnePart, partShownBy } from '../shown-part.ts';
import { sideInTheWay } from '../side-in-the-way.ts';
import { watchAsItComes } from '../steps.ts';
import { type Choice, stopOf, testOffers } from '../tests.ts';
import { goesOnAnyway, testsAtAnyCost, waysOn } from '../ways-on.ts';
import { escalateOffer, isDayOver, whyInVain } from './hand-over.ts';
import { hasWaitedFor, usualUntil, waitForPart, waitForReports } from './waiting.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

/** No change is open: the proof of the last one, the next one, or the end of looking. */
export function readyStage(asked: Asked, choice: () => Choice): Stage {
  return (
    keptCureStage(asked, choice) ??
    confirmStage(asked, choice) ??
    idleWatchStage(asked) ??
    nextStage(asked, choice())
  );
}

/** What it was begun for was decided otherwise while it ran. */
function idleWatchStage({ record }: Asked): Stage | null {
  return runningWatch(record) === null
    ? null
    : stage(message('watchForNothing'), [endOffer(record), ...seenOffers(record), escalateOffer(record)]);
}

/** What took the fault away was kept: there is nothing left to test it on. */
function keptCureStage(asked: Asked, choice: () => Choice): Stage | null {
  const { record, known } = asked;
  const cure = keptCure(record);
  if (cure === null) return null;
  const what = { change: namedChange(cure), place: namedPlace(known.chain, cure.target) };
  if (whyNoProof(cure) !== null)
    return stage(message('cureKeptShowsNothing', what), [
      escalateOffer(record),
      ...waitingOffers(asked, { minutes: usualWaitMin(asked) }),
      offering({ type: 'locateSideAgain' }),
    ]);
  return stage(message('cureKeptNameIt', what), [
    ...nameOffers(asked, cure, choice()),
    offering({ type: 'locateSideAgain' }),
    escalateOffer(record),
  ]);
}

/** After a change cleared the fault and was put back: see it return, then name the culprit. */
function confirmStage(asked: Asked, choice: () => Choice): Stage | null {
  const { record, known, now } = asked;
  const change = changeToConfirm(record);
  if (change === null) return null;
  const isLast = changesOfRound(record).at(-1)?.id === change.id;
  if (!isLast || !changeCatalogue[change.kind].showsCulprit) return null;
  const watches = watchesFor(record, 'confirm').filter(({ changeId }) => changeId === change.id);
  const what = { change: namedChange(change), place: namedPlace(known.chain, change.target) };
  const name = nameOffers(asked, change, choice());
  if (occurrencesIn(watches).length > 0) {
    const isBack = message('changeFaultIsBack', what);
    if (isPlain(change, choice())) return stage(isBack, [...name, ...seenOffers(record), endOffer(record)]);
    return runningWatch(record) === null
      ? nextStage(asked, choice())
      : stage(isBack, [endOffer(record), ...name, ...seenOffers(record)]);
  }
  const usualMin = usualWaitMin(asked);
  const watchedMin = watches.reduce(
    (sum, each) => sum + minutesCounted(record, { ...each, endedAt: each.endedAt ?? now }),
    0,
  );
  const tries = Math.ceil(patience * usualTries(record)) - watches.reduce((sum, each) => sum + each.tries, 0);
  const leftMin = usualMin === null ? null : Math.max(0, patience * usualMin - watchedMin);
  const looks = watches.filter(({ mode, endedAt }) => mode === 'look' && endedAt !== null).length;
  const isOver =
    leftMin === 0 || (leftMin === null && tries <= 0) || looks >= looksUntilSure(record.settings.risk);
  if (isOver)
    return stage(message('changeDidNotReturn', what), [
      ...name,
      ...endings(asked, choice()),
      ...seenOffers(record),
      endOffer(record),
    ]);
  const said =
    usualMin === null
      ? message('changeWaitForReturn', what)
      : message('changeWaitForReturnEvery', { ...what, everyMin: usualMin });
  // Nobody sits through it: whoever lives there sees it come back.
  if (usualMin !== null && patience * usualMin > visitAtMostMin && runningWatch(record) === null) {
    const waits = hasWaitedFor(record, 'client') ? [] : [waitForReports(record, usualUntil(now))];
    return stage(said, [...waits, ...name, ...endings(asked, choice())]);
  }
  return stage(said, [...waitingOffers(asked, { minutes: leftMin, tries }), ...name]);
}

/** Whether it is settled what a change has shown; where it took a stretch out of the way, which part is yet to be found. */
const isPlain = ({ kind }: ChangeRecord, { plan, tests }: Choice): boolean =>
  isOfOnePart(kind) || plan.advice.kind === 'culprit' || tests.views.length === 0;

/** The fault is waited for this many times as long as it usually takes: it shows then in 95 of 100 cases, if it is there. */
const patience = 3;

/**
 * Minutes between occurrences before any change, as reported or told where nobody saw one, else as assumed; null where tries
 * or looks were counted.
 */
function usualWaitMin({ record, now, table }: Asked): number | null {
  const baseline = baselineOf(record);
  if (baseline?.mode === 'time' && baseline.occurrences > 0) return baseline.minutes / baseline.occurrences;
  if (baseline !== null && seenIn(baseline) > 0) return null;
  if (watchAsItComes({ record, now }, null).mode !== 'time') return null;
  return 60 / (rateOf(record, now, table).perHour ?? assumedRatePerHour);
}

/** Tries between failures before any change. */
function usualTries(record: TriageRecord): number {
  const baseline = baselineOf(record);
  return baseline?.mode === 'trigger' && baseline.failures > 0 ? baseline.tries / baseline.failures : 1;
}

/** Naming what a change has shown, where the fault was seen to return without it, and where it was not. */
function nameOffers({ record, known }: Asked, change: ChangeRecord, { plan }: Choice): Offer[] {
  const returned = watchesFor(record, 'confirm').findLast(
    (watch) => watch.changeId === change.id && occurrencesIn([watch]).length > 0,
  );
  const confirmation =
    returned === undefined
      ? ({ kind: 'notDone' } as const)
      : ({ kind: 'returned', watchId: returned.id } as const);
  const place = partShownBy(change, plan);
  const text = message('nameCulpritAt', { place: namedPlace(known.chain, place) });
  return [afterWatch(record, { type: 'nameCulprit', changeId: change.id, place, confirmation }, { text })];
}

/** The tests that are worth their time, then what ends the looking. */
function nextStage(asked: Asked, choice: Choice): Stage {
  const { tests, plan } = choice;
  const inVain = whyInVain(asked.record);
  if (inVain !== null)
    return stage(inVain, [
      escalateOffer(asked.record),
      ...(isDayOver(asked.record) ? [] : testOffers(asked, tests)),
      ...endings(asked, choice),
    ]);
  const wrong = knownWrong(asked);
  const mends = wrong.flatMap(({ offer }) => (offer === null ? [] : [offer]));
  if (mends.length > 0)
    return stage(message('sentences', { sentences: wrong.map(({ sentence: said }) => said) }), [
      ...mends,
      ...testOffers(asked, tests),
      ...endings(asked, choice),
    ]);
  const [look] = [...settingOffers(asked), ...witnessesBefore(asked, choice)];
  if (look !== undefined)
    return stage(look.text, [look, ...testOffers(asked, tests), ...endings(asked, choice)]);
  if (tests.views.length === 0 && plan.advice.kind === 'escalate') {
    const back = sideInTheWay(asked);
    return back === null
      ? waysStage(asked, choice)
      : { ...back, offers: [...back.offers, ...endings(asked, choice)] };
  }
  const sentence: Message =
    tests.views.length === 0 ? plan.sentence : message('sentences', { sentences: tests.sentences });
  const known = wrong.map(({ sentence: said }) => said);
  return {
    ...stage(known.length === 0 ? sentence : message('sentences', { sentences: [...known, sentence] }), [
      ...testOffers(asked, tests),
      ...endings(asked, choice),
    ]),
    stop: tests.views.length === 0 ? stopOf(plan) : null,
  };
}

/**
 * Whoever can see it is asked before anything is done that would show the same; and before a case is handed over that rests
 * on menus alone. After changes in vain there are perhaps two faults, and a witness answers for one of them.
 */
function witnessesBefore(asked: Asked, { plan: { advice }, tests: { views } }: Choice): Offer[] {
  const [next] = views;
  if (next === undefined && advice.kind === 'escalate' && changesOfRound(asked.record).length === 0)
    return witnessOffers(asked);
  const kind = changeKinds.find((each) => each === next?.kind);
  if (next === undefined || kind === undefined || !changeCatalogue[kind].asksWitnessFirst) return [];
  const { setup, watch, restore } = next.minutes;
  return askingMin(asked) < setup + watch + restore ? witnessOffers(asked) : [];
}

/** What is left to test costs more than it may bring: the client chooses between going on, replacing and handing over. */
function waysStage(asked: Asked, choice: Choice): Stage {
  const atAnyCost = goesOnAnyway(asked) ? testsAtAnyCost(asked) : null;
  if (atAnyCost !== null && atAnyCost.tests.views.length > 0) {
    const offers = [...testOffers(asked, atAnyCost.tests), ...endings(asked, choice)];
    return stage(message('sentences', { sentences: atAnyCost.tests.sentences }), offers);
  }
  const { offered, offers } = waysOn(asked, choice);
  const sentences = [choice.plan.sentence, message('clientChooses')];
  return {
    ...stage(message('sentences', { sentences }), [
      ...(waitsNext(asked, choice) ? waitOffers(choice) : []),
      ...offers.toReversed(),
      ...endings(asked, choice),
    ]),
    stop: stopOf(choice.plan),
    ways: offered,
  };
}

const waitOffers = ({ plan: { outOfReach } }: Choice): Offer[] =>
  outOfReach === null ? [] : [waitForPart(outOfReach.text)];

/** Nothing is left to test with what is at hand, and it was not waited for a part yet. */
const waitsNext = ({ record }: Asked, { tests }: Choice): boolean =>
  tests.views.length === 0 && !hasWaitedFor(record, 'part');

function endings(asked: Asked, choice: Choice): Offer[] {
  const { record } = asked;
  const shown = changesOfRound(record).findLast((change) => whyNoProof(change) === null);
  const name = shown === undefined ? [] : nameOffers(asked, shown, choice);
  const wait = waitOffers(choice);
  const isNext = waitsNext(asked, choice);
  const others = [
    ...(isNext ? wait : []),
    escalateOffer(record),
    offering({ type: 'locateSideAgain' }),
    ...(isNext ? [] : wait),
  ];
  return choice.plan.advice.kind === 'culprit' ? [...name, ...others] : [...others, ...name];
}
