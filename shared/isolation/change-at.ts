import { findDevice, findLink, findPort } from '../chain/graph.ts';
import { placeExists } from '../chain/place.ts';
import type { Chain, Place } from '../contract/chain.ts';
import type { ChangeKind } from '../contract/change.ts';
import { type Message, message } from '../message/message.ts';
import { changeCatalogue } from './change-catalogue.ts';
import type { Caution, ChangeFacts, Scene } from './change-facts.ts';
import { doneTo } from './change-places.ts';
import type { KitItem } from './kit.ts';

/** What the catalogue says of a kind of change that is made to one kind of place. */
type Made<At> = {
  whyNot: (scene: Scene, at: At) => Message | null;
  needsAt: (at: At) => Message[];
  cautionsAt: (at: At) => Caution[];
  kit: readonly KitItem[] | ((at: At) => readonly KitItem[]);
};
type Asking<Answer> = <At>(facts: Made<At>, at: At) => Answer;

/** Asks the catalogue of a change at a place; null for one that the chain doesn't have, or that it is not made to. */
function askedAt<Answer>(
  chain: Chain,
  { kind, target }: { kind: ChangeKind; target: Place },
  ask: Asking<Answer>,
): Answer | null {
  const facts: ChangeFacts = changeCatalogue[kind];
  if (facts.target === 'link') {
    const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
    return link === undefined ? null : ask(facts, link);
  }
  if (facts.target === 'chain') return ask(facts, chain);
  if (facts.target === 'place')
    return placeExists(chain, target) ? ask(facts, { chain, place: target }) : null;
  const deviceId = target.kind === facts.target ? target.deviceId : '';
  const device = findDevice(chain, deviceId);
  if (device === undefined) return null;
  if (facts.target === 'device') return ask(facts, device);
  const port = target.kind === 'port' ? findPort(chain, target) : undefined;
  return port === undefined ? null : ask(facts, { device, port });
}

/** Why a change makes no sense at a place; null when it does. */
export function whyNotAt(scene: Scene, kind: ChangeKind, target: Place): Message | null {
  const { target: wanted } = changeCatalogue[kind];
  if (wanted !== 'place' && target.kind !== wanted) return message(doneTo[wanted], { change: kind });
  const why = askedAt(scene.chain, { kind, target }, (facts, at) => ({ said: facts.whyNot(scene, at) }));
  return why === null ? message('nothingUnderThatId') : why.said;
}

const needs: Asking<Message[]> = ({ needsAt }, at) => needsAt(at);
const cautions: Asking<Caution[]> = ({ cautionsAt }, at) => cautionsAt(at);
const kitAt: Asking<readonly KitItem[]> = ({ kit }, at) => (typeof kit === 'function' ? kit(at) : kit);

/** What a place adds to what a change needs. */
export const needsAt = (chain: Chain, kind: ChangeKind, target: Place): Message[] =>
  askedAt(chain, { kind, target }, needs) ?? [];

/** What a place adds to what to take care of. */
export const cautionsAt = (chain: Chain, kind: ChangeKind, target: Place): Caution[] =>
  askedAt(chain, { kind, target }, cautions) ?? [];

/** What a change at a place takes. */
export const kitFor = (chain: Chain, kind: ChangeKind, target: Place): readonly KitItem[] =>
  askedAt(chain, { kind, target }, kitAt) ?? [];
