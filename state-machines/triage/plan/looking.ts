import { displaysOf, linkAtPort, sourcesOf } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { placeKey } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { Offer } from '../../../shared/contract/plan.ts';
import { liesOverPicture, menuTells } from '../../../shared/isolation/index.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { isMenuKnown, meetingPoint, readingsAsFound } from '../looks.ts';
import { changesOfRound, standingLooks, standingSides } from '../record.ts';
import { answerAt } from '../rules/side-answers.ts';
import { fieldsFor } from '../signal-compare.ts';
import { boundsOf, nextToRead } from '../trace.ts';
import type { Asked } from './asked.ts';
import type { Step } from './fill-in.ts';
import { traceOn } from './look-results.ts';
import { vanishedInVain } from './menus.ts';
import { offering } from './offer.ts';

/** Looks before the first change; more cost patience and seldom change what is done then. Assumed. */
const mostLooks = 3;
/** A socket is looked at first where it is suspected at least this much; assumed. */
const worthLooking = 0.05;
/** Where it is suspected this much, before anything else is read; assumed. */
const worthLookingFirst = 0.15;
/** Witnesses that are asked at most: it costs the client's patience. Assumed. */
const mostWitnesses = 2;

const deviceAt = (deviceId: string) => ({ kind: 'device', deviceId }) as const;
const nameOf = ({ known: { chain } }: Asked, place: Place) => namedPlace(chain, place);

/** A look, to be filled in by whoever takes it. */
const looking = (what: object, text: Message, why: Message | null): Offer =>
  offering({ type: 'recordLook', what, evidenceId: null } as Step, {
    text,
    ...(why === null ? {} : { why }),
  });

/**
 * What is worth looking at where menus tell nothing, before anything is changed, the best first: a setting that nobody has looked at, what the
 * device in the middle of what is left receives and sends, and what else shows the fault. Each could change what comes
 * next; there are no more than a few.
 */
export function lookOffers(asked: Asked): Offer[] {
  const { record } = asked;
  if (changesOfRound(record).length > 0 || !isTraced(asked)) return [];
  if (looksTaken(asked) >= mostLooks) return witnessOffers(asked);
  const port = portToLookAt(asked);
  const reading = readingOffer(asked);
  const ports = port === null ? [] : [port.offer];
  const readings = reading === null ? [] : [reading];
  return port !== null && port.chance >= worthLookingFirst
    ? [...ports, ...readings, ...witnessOffers(asked)]
    : [...readings, ...witnessOffers(asked), ...ports];
}

/** A setting that nobody has looked at comes before anything is swapped, where it is likely enough to be why. */
export function settingOffers(asked: Asked): Offer[] {
  const isBegun = changesOfRound(asked.record).length > 0;
  const port = isBegun || looksTaken(asked) >= mostLooks ? null : portToLookAt(asked);
  return port === null || port.chance < worthLookingFirst ? [] : [port.offer];
}

const looksTaken = (asked: Asked): number =>
  readIds(asked).size + standingLooks(asked.record, 'portMode').length;

const readIds = ({ record }: Asked): Set<string> =>
  new Set(readingsAsFound(record).map(({ what }) => what.deviceId));

/** Pages are read where menus tell nothing: they are not asked, or there are none. */
const isTraced = ({ record, menus }: Asked): boolean =>
  !menuTells.includes(record.symptom.kind) || menus.length === 0;

function readingOffer(asked: Asked): Offer | null {
  const { record, known } = asked;
  const trace = traceOn(record, known);
  const [deviceId] = trace === null ? [] : nextToRead(trace, readIds(asked));
  if (deviceId === undefined) return null;
  const place = nameOf(asked, deviceAt(deviceId));
  const text = message('readSignalAt', { place, fields: [...fieldsFor(record.symptom)], isBad: true });
  return looking({ kind: 'signal', deviceId, moment: 'bad' }, text, message('readSignalWhy'));
}

/** The socket on the way whose setting is not known and is suspected most. */
function portToLookAt(asked: Asked): { chance: number; offer: Offer } | null {
  const { record, known, standing } = asked;
  const { model, chances } = standing;
  const looked = new Set(
    standingLooks(record, 'portMode').map(({ what }) => `${what.deviceId} ${what.portId}`),
  );
  const [best] = model.hypotheses
    .map(({ component, mode }, at) => ({ component, mode, chance: chances[at] ?? 0 }))
    .filter(({ mode, chance }) => mode === 'portMode' && chance >= worthLooking)
    .toSorted((a, b) => b.chance - a.chance)
    .flatMap(({ component, chance }) => {
      const device = known.chain.devices.find(({ id }) => placeKey(deviceAt(id)) === component);
      const ports = (device?.ports ?? []).filter((port) => {
        const link = linkAtPort(known.chain, { deviceId: device?.id ?? '', portId: port.id });
        const isOnTheWay =
          link !== undefined && model.scope.path.has(placeKey({ kind: 'link', linkId: link.id }));
        return port.setMode === null && isOnTheWay && !looked.has(`${device?.id} ${port.id}`);
      });
      return ports.map((port) => ({ deviceId: device?.id ?? '', portId: port.id, chance }));
    });
  if (best === undefined) return null;
  const { deviceId, portId, chance } = best;
  const place = nameOf(asked, { kind: 'port', deviceId, portId });
  const what = { kind: 'portMode', deviceId, portId };
  const offer = looking(what, message('lookAtPortMode', { place }), message('lookAtPortModeWhy'));
  return { chance, offer };
}

/** Minutes that the first question to a client is worth, for their patience; each further one so much more. Assumed. */
const patienceMin = 3;

/** Minutes that asking the client once more is worth, after what they were asked in this round. */
export const askingMin = ({ record }: Pick<Asked, 'record'>): number =>
  patienceMin * (1 + standingLooks(record, 'witness').length);

/** Other displays, and other sources, of which the client has not told whether they show it: asked before unplugging. */
export function witnessOffers(asked: Asked): Offer[] {
  const { record, known } = asked;
  const { chain, intake } = known;
  const answered = new Set(standingLooks(record, 'witness').map(({ what }) => what.deviceId));
  const among = (devices: { id: string }[], told: readonly string[]) => {
    const [beside, ...others] = devices.map(({ id }) => id);
    return told.length > 0 || beside === undefined
      ? []
      : others.map((deviceId) => ({ kind: 'witness', deviceId, besideId: beside }) as const);
  };
  return [
    ...among(displaysOf(chain), intake.affectedDisplays),
    ...among(sourcesOf(chain), asked.facts.affectedSources),
  ]
    .slice(0, mostWitnesses)
    .filter((what) => !answered.has(what.deviceId) && meetingPoint(chain, what) !== null)
    .map((what) => {
      const place = nameOf(asked, deviceAt(what.deviceId));
      const beside = nameOf(asked, deviceAt(what.besideId));
      return looking(what, message('askWitness', { place, beside }), message('askWitnessWhy'));
    });
}

/** Trying once what a device's menu does by itself, where that is not known. */
export function menuTrialOffers(asked: Asked, deviceId: string): Offer[] {
  const { record, known } = asked;
  if (liesOverPicture(record.symptom)) return [];
  const wasTried = record.looks.some(
    ({ what, withdrawn }) => what.kind === 'menu' && what.deviceId === deviceId && withdrawn === null,
  );
  if (wasTried || isMenuKnown(record, known.chain, deviceId)) return [];
  const text = message('tryMenuAt', { place: nameOf(asked, deviceAt(deviceId)) });
  return [looking({ kind: 'menu', deviceId }, text, message('tryMenuWhy'))];
}

/** Whether what a menu did can lead to a side: it stayed, or it is known what it does by itself, or that can be tried. */
export const canTell = (asked: Asked, deviceId: string): boolean =>
  !vanishedInVain(asked.record, asked.known.chain, deviceId) || menuTrialOffers(asked, deviceId).length > 0;

export type Conclusion = { sentence: Message; offer: Offer };

/** Concluding what readings or witnesses say of the side, once there is nothing more to ask them. */
export function conclusionOf(asked: Asked): Conclusion | null {
  return traceConclusion(asked) ?? witnessConclusion(asked);
}

function traceConclusion(asked: Asked): Conclusion | null {
  const { record, known } = asked;
  const trace = traceOn(record, known);
  if (
    trace === null ||
    (trace.found === null && readingOffer(asked) !== null && lookOffers(asked).length > 0)
  )
    return null;
  const concluded = new Set(standingSides(record).map(({ deviceId }) => deviceId));
  const bounds = boundsOf(trace).filter((id) => !concluded.has(id));
  const [first] = bounds;
  if (first === undefined) return null;
  const { found } = trace;
  const at = found === null ? deviceAt(first) : found;
  const place = nameOf(asked, at);
  const sentence =
    found === null
      ? message('concludeByTraceAt', { place })
      : message(found.kind === 'device' ? 'traceFoundDevice' : 'traceFoundLink', { place });
  const steps = bounds.map((deviceId): Step => ({ type: 'concludeSide', deviceId, from: 'trace' }));
  return { sentence, offer: offering(steps, { text: message('concludeByTraceAt', { place }) }) };
}

function witnessConclusion(asked: Asked): Conclusion | null {
  const { record, known } = asked;
  const concluded = new Set(standingSides(record).map(({ deviceId }) => deviceId));
  const told = standingLooks(record, 'witness').flatMap(({ what }) => meetingPoint(known.chain, what) ?? []);
  const deviceId = told.find(
    (id) =>
      !concluded.has(id) && 'answer' in answerAt(record, known.chain, { deviceId: id, from: 'witness' }),
  );
  if (deviceId === undefined) return null;
  const text = message('concludeByWitnessAt', { place: nameOf(asked, deviceAt(deviceId)) });
  return { sentence: text, offer: offering({ type: 'concludeSide', deviceId, from: 'witness' }, { text }) };
}
