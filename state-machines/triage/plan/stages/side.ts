import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Offer, PlannedTestView } from '../../../../shared/contract/plan.ts';
import type { Watch } from '../../../../shared/contract/triage.ts';
import { menuStaysIn } from '../../../../shared/isolation/menu-stays.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import {
  isSideSettled,
  occurrencesIn,
  occurrencesOf,
  runningWatch,
  standingSides,
  watchesFor,
} from '../../record.ts';
import type { Asked } from '../asked.ts';
import { canTell, conclusionOf, lookOffers, menuTrialOffers, witnessOffers } from '../looking.ts';
import { menuContradictsItself, menuPatienceMin } from '../menus.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { sideInTheWay } from '../side-in-the-way.ts';
import { watchAsItComes } from '../steps.ts';
import { type Choice, stopOf, testOffers } from '../tests.ts';
import { escalateOffer, whyInVain } from './hand-over.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

const deviceAt = (deviceId: string) => ({ kind: 'device', deviceId }) as const;
const placeOf = ({ known: { chain } }: Asked, deviceId: string | null) =>
  namedPlace(chain, deviceAt(deviceId ?? ''));

/** Finding the side of a device that the fault lies on. */
export function sideStage(asked: Asked, choice: () => Choice): Stage {
  const running = runningWatch(asked.record);
  if (running !== null) return menuUpStage(asked, running);
  const answered = answeredDevice(asked);
  if (answered === null) return lookStage(asked, choice) ?? nextMenuStage(asked, choice());
  const trial = isMenuUnclear(asked, answered) ? menuTrialOffers(asked, answered) : [];
  if (trial.length > 0) return trialStage(asked, trial, choice());
  return menuContradictsItself(asked.record, answered) && isInTwoMinds(asked, answered)
    ? contradictionStage(asked, answered, choice())
    : stage(message('concludeSideAt', { place: placeOf(asked, answered) }), [
        offering({ type: 'concludeSide', deviceId: answered }),
        ...takingBack(asked, answered),
        ...nextOffers(asked, choice()),
      ]);
}

function menuUpStage(asked: Asked, running: Watch): Stage {
  const { record } = asked;
  const place = placeOf(asked, running.menuDeviceId);
  const seen = occurrencesOf(running).length;
  if (seen === 0) return stage(message('menuUpWait', { place }), waitingOffers(asked, { minutes: null }));
  const conclude = afterWatch(record, { type: 'concludeSide', deviceId: running.menuDeviceId ?? '' });
  return stage(message('menuUpSeen', { seen, place }), [conclude, endOffer(record), ...seenOffers(record)]);
}

/**
 * A device with whose menu up the fault was seen, and of which no side was concluded. What was taken back comes after the
 * others, and not again once another's side stands in its place: the two may contradict each other.
 */
function answeredDevice(asked: Asked): string | null {
  const { record } = asked;
  const standing = new Set(standingSides(record).map(({ deviceId }) => deviceId));
  const takenBack = new Set(
    record.sides
      .filter(({ round, withdrawn }) => round === record.round && withdrawn !== null)
      .map(({ deviceId }) => deviceId),
  );
  const answered = watchesFor(record, 'side')
    .filter((watch) => occurrencesOf(watch).length > 0)
    .map(({ menuDeviceId }) => menuDeviceId ?? '')
    .filter((deviceId) => !standing.has(deviceId) && canTell(asked, deviceId));
  const untouched = answered.filter((deviceId) => !takenBack.has(deviceId));
  return untouched.at(-1) ?? (standing.size === 0 ? answered.at(-1) : undefined) ?? null;
}

const sideWatchesAt = ({ record }: Asked, deviceId: string): Watch[] =>
  watchesFor(record, 'side').filter((watch) => watch.menuDeviceId === deviceId);

/** Whether what stands of a menu's answers contradicts itself: what was withdrawn doesn't count. */
const isInTwoMinds = (asked: Asked, deviceId: string): boolean =>
  new Set(occurrencesIn(sideWatchesAt(asked, deviceId)).map(({ menu }) => menu)).size > 1;

/** A menu vanished, and what that says hangs on what this menu does by itself. */
const isMenuUnclear = (asked: Asked, deviceId: string): boolean =>
  !isInTwoMinds(asked, deviceId) &&
  occurrencesIn(sideWatchesAt(asked, deviceId)).some(({ menu }) => menu === 'vanished');

const trialStage = (asked: Asked, trial: readonly Offer[], choice: Choice): Stage =>
  stage(trial[0]?.text ?? message('noSideCanBeProven'), [...trial, ...nextOffers(asked, choice)]);

/** What was read or asked is concluded from, or the next thing is looked at, before a menu is watched or anything swapped. */
function lookStage(asked: Asked, choice: () => Choice): Stage | null {
  const conclusion = conclusionOf(asked);
  if (conclusion !== null)
    return stage(conclusion.sentence, [conclusion.offer, ...nextOffers(asked, choice())]);
  if (standingSides(asked.record).length > 0) return null;
  const looks = lookOffers(asked);
  const [first] = looks;
  return first === undefined ? null : stage(first.text, [...looks, ...nextOffers(asked, choice())]);
}

/** Taking back what a device's menu was seen to do: the side that another one gave, or a watch. */
const takingBack = (asked: Asked, deviceId: string): Offer[] => [
  ...standingSides(asked.record).map((side) => offering({ type: 'withdrawSide', deviceId: side.deviceId })),
  ...sideWatchesAt(asked, deviceId).map(({ id }) => offering({ type: 'voidWatch', watchId: id })),
];

/** A menu that stayed and vanished tells no side: another device's menu does, or taking back the watch that was wrong. */
function contradictionStage(asked: Asked, deviceId: string, choice: Choice): Stage {
  const answers = occurrencesIn(sideWatchesAt(asked, deviceId));
  const stayed = answers.filter(({ menu }) => menu === 'stayed').length;
  const vanished = answers.length - stayed;
  const contradicts = message('menuContradicts', { device: placeOf(asked, deviceId), stayed, vanished });
  const next = nextMenuStage(asked, choice);
  return stage(message('sentences', { sentences: [contradicts, next.sentence] }), [
    ...next.offers,
    ...takingBack(asked, deviceId),
  ]);
}

/** Where no watch has its answer yet: the next menu, the next change, or going on with what there is. */
function nextMenuStage(asked: Asked, choice: Choice): Stage {
  const { tests, plan } = choice;
  const inVain = whyInVain(asked.record);
  if (inVain !== null) return stage(inVain, [escalateOffer(asked.record), ...nextOffers(asked, choice)]);
  if (tests.views.length > 0) return stage(inOrder(tests.sentences), nextOffers(asked, choice));
  const back = plan.advice.kind === 'escalate' ? sideInTheWay(asked) : null;
  if (back !== null) return { ...back, offers: [...back.offers, ...nextOffers(asked, choice)] };
  if (standingSides(asked.record).length > 0)
    return { ...stage(plan.sentence, nextOffers(asked, choice)), stop: stopOf(plan) };
  const [menuId] = menusByUse(asked);
  const said: Message[] =
    plan.advice.kind === 'culprit' ? [message('byAllThatIsKnown', { place: plan.advice.named })] : [];
  const then =
    menuId === undefined
      ? message('noSideCanBeProven')
      : message('proveSideFirst', { place: placeOf(asked, menuId) });
  return stage(inOrder([...said, then]), nextOffers(asked, choice));
}

const inOrder = (sentences: Message[]): Message => message('sentences', { sentences });

/** Menus to choose from beside those that the plan proposes. */
const mostMenus = 5;

/** The ways on that need no answer of a menu first. */
function nextOffers(asked: Asked, { tests }: Choice): Offer[] {
  const planned = new Set(tests.views.map(({ target }: PlannedTestView) => JSON.stringify(target)));
  const trials = tests.views
    .slice(0, 1)
    .flatMap(({ kind, target }) =>
      kind === 'menu' && target.kind === 'device' ? menuTrialOffers(asked, target.deviceId) : [],
    );
  return [
    ...trials,
    ...testOffers(asked, tests),
    ...menusByUse(asked)
      .filter((deviceId) => !planned.has(JSON.stringify(deviceAt(deviceId))))
      .slice(0, mostMenus)
      .map((deviceId) =>
        offering(watchAsItComes(asked, menuPatienceMin(asked.record), deviceId), {
          text: message('watchWithMenuUp', { place: placeOf(asked, deviceId) }),
        }),
      ),
    offering({ type: 'beginSubstitution' }),
    ...witnessOffers(asked),
    ...(isSideSettled(asked.record) ? [] : [offering({ type: 'goOnWithoutSide' })]),
    escalateOffer(asked.record),
  ];
}

/** In a chain with more menus than this, one in so many along the signal is looked at; assumed. */
const mostWeighed = 40;

/** The side has to be proven even where the ranking sees no use in it: the menu that halves what is suspected comes first. */
function menusByUse({ record, menus, standing: { model, chances } }: Asked): string[] {
  if (standingSides(record).length > 0) return [];
  const unevenness = (deviceId: string): number => {
    const stays = menuStaysIn(model, deviceId);
    return Math.abs(chances.reduce((sum, chance, at) => sum + chance * (stays[at] ?? 0), 0) - 0.5);
  };
  const every = Math.ceil(menus.length / mostWeighed);
  return menus
    .filter((_, at) => at % every === 0)
    .map((deviceId) => ({ deviceId, unevenness: unevenness(deviceId) }))
    .sort((a, b) => a.unevenness - b.unevenness)
    .map(({ deviceId }) => deviceId);
}
