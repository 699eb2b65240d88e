import { displaysOf, sourcesOf } from '../../shared/chain/graph.ts';
import { placeKey } from '../../shared/chain/place.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import { reachOf } from '../support/house/doings.ts';
import {
  anyFault,
  type Cause,
  causesTogether,
  type Fault,
  oneOf,
  type Rhythm,
} from '../support/house/faults.ts';
import { randomFrom } from '../support/random.ts';
import { nowhere, type PlayedCase } from './cases.ts';
import { cinema, cinemaWithSettings, gamesRoom, house, lounge, row, wall } from './houses.ts';

const houses = { cinema, cinemaWithSettings, gamesRoom, house, lounge, row, wall };
/** A client who knows how it comes says so; so many of a hundred don't. */
const untoldShare = 0.15;
const twoShare = 0.1;

/** What a client sees of a cause; invented, and on purpose not what the product weighs symptoms by. */
const seenOf: Partial<Record<Cause, readonly string[]>> = {
  bandwidth: ['dropOuts', 'sparkles', 'noPicture'],
  contact: ['dropOuts', 'sparkles', 'noPicture', 'wrongColour'],
  wallPlate: ['dropOuts', 'sparkles'],
  direction: ['noPicture'],
  linkPower: ['dropOuts', 'noPicture'],
  portMode: ['noHdr', 'wrongRateOrResolution', 'noPicture'],
  hdrSetting: ['noHdr', 'wrongColour'],
  edid: ['wrongRateOrResolution', 'noHdr', 'noPicture'],
  contentProtection: ['contentProtectionMessage', 'noPicture'],
  reset: ['noHdr', 'wrongRateOrResolution', 'wrongColour'],
  processing: ['noHdr', 'wrongRateOrResolution', 'dropOuts'],
  content: ['noHdr', 'wrongRateOrResolution', 'dropOuts'],
  disturber: ['dropOuts', 'sparkles'],
  earthLoop: ['sparkles', 'dropOuts'],
};
const anySymptom = ['dropOuts', 'noPicture'] as const;

/** What goes wrong as parts are switched and talk to each other. */
const comesWhenSwitched: readonly Cause[] = ['controlBus', 'wakeOrder', 'controlSystem'];
/** Whoever was told with what it shows plays that, and it is what it seems nine times in ten. */
const asToldShare = 0.9;

/** Some causes come only in one way: what is laid or set wrong is so always, what joins parts never waits for warmth. */
const rhythmOf = (cause: Cause, drawn: Rhythm, random: () => number): Rhythm => {
  const isStatic = ['direction', 'portMode', 'hdrSetting', 'reset'].includes(cause);
  if (isStatic)
    return random() < 0.7 ? { kind: 'always' } : { kind: 'trigger', trigger: 'formatChange', chance: 1 };
  if (cause === 'heat') return { kind: 'warm', afterMin: 20 + 60 * random(), perHour: 2 + 10 * random() };
  if (comesWhenSwitched.includes(cause))
    return {
      kind: 'trigger',
      trigger: oneOf(['switchingOn', 'sourceChange', 'afterStandby'] as const, random),
      chance: 0.3 + 0.7 * random(),
    };
  const isOfOutside = cause === 'disturber' || cause === 'earthLoop';
  if (isOfOutside && (drawn.kind === 'always' || drawn.kind === 'warm'))
    return { kind: 'random', perHour: 1 + 10 * random() };
  if (cause === 'disturber' && drawn.kind === 'trigger') return { ...drawn, trigger: 'applianceSwitches' };
  return drawn;
};

function faultFor(chain: Chain, random: () => number): Fault {
  const any = anyFault(chain, random);
  const { cause, at } =
    random() < 0.1 ? { cause: oneOf(causesTogether, random), at: nowhere } : { cause: any.cause, at: any.at };
  const rhythm = rhythmOf(cause, any.rhythm, random);
  const { onlyWith } = any;
  if (onlyWith?.kind === 'content')
    return { cause, at, rhythm, onlyWith: { ...onlyWith, share: asToldShare } };
  const isSource = onlyWith !== null && whatShows(chain, { ...any, at }).sources.includes(onlyWith.deviceId);
  return { cause, at, rhythm, onlyWith: isSource ? onlyWith : null };
}

/** The sources and displays that a fault can be seen with. */
function whatShows(chain: Chain, { at, onlyWith }: Fault): { sources: string[]; displays: string[] } {
  const all = (devices: readonly { id: string }[]) => devices.map(({ id }) => id);
  const [sources, displays] = [all(sourcesOf(chain)), all(displaysOf(chain))];
  if (at.kind === 'chain') return { sources, displays };
  const { before, after } = reachOf(chain, at);
  const meets = (ids: ReadonlySet<string>) => (id: string) => ids.has(id) || placeKey(at) === `device:${id}`;
  const only = onlyWith?.kind === 'source' ? [onlyWith.deviceId] : sources.filter(meets(before));
  return { sources: only, displays: displays.filter(meets(after)) };
}

/** A case that nobody chose: house, place, cause and rhythm are drawn. What the client tells follows from the fault. */
export function drawnCase(seed: number): PlayedCase {
  const random = randomFrom(seed);
  const name = oneOf(Object.keys(houses) as (keyof typeof houses)[], random);
  const chain = houses[name]();
  const first = faultFor(chain, random);
  const faults = random() < twoShare ? [first, faultFor(chain, random)] : [first];
  const { sources, displays } = whatShows(chain, first);
  const some = (ids: string[], of: number) => (ids.length > 0 && ids.length < of ? ids : undefined);
  const affectedSources = some(sources, sourcesOf(chain).length);
  const affectedDisplays = some(displays, displaysOf(chain).length);
  return {
    name: `${seed} ${name}: ${faults.map(({ cause, at, rhythm }) => `${cause} ${placeKey(at)} ${told(rhythm)}`).join(' + ')}`,
    chain,
    symptom: oneOf(seenOf[first.cause] ?? anySymptom, random),
    faults,
    intake: { ...(affectedSources && { affectedSources }), ...(affectedDisplays && { affectedDisplays }) },
    patternUntold: random() < untoldShare,
    seed,
  };
}

const told = (rhythm: Rhythm): string =>
  rhythm.kind === 'trigger'
    ? `on ${rhythm.trigger} ${rhythm.chance.toFixed(2)}`
    : Object.entries(rhythm)
        .map(([, value]) => (typeof value === 'number' ? value.toPrecision(2) : value))
        .join(' ');
