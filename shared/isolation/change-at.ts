import { findDevice, findLink, findPort } from '../chain/graph.ts';
import { placeExists } from '../chain/place.ts';
import type { Chain, Place } from '../contract/chain.ts';
import type { ChangeKind } from '../contract/change.ts';
import { type Message, message } from '../message/message.ts';
import { changeCatalogue } from './change-catalogue.ts';
import type { Caution, ChangeFacts, Scene } from './change-facts.ts';
import { doneTo } from './change-places.ts';
import type { KitItem } from './kit.ts';

/** What the catalogue says of a change at one place. */
type ChangeAt = {
  whyNot(scene: Scene): Message | null;
  needs(): Message[];
  cautions(): Caution[];
  kit(): readonly KitItem[];
};

/** Null for a place that the chain doesn't have, or of a kind that the change is not made to. */
function changeAt(chain: Chain, kind: ChangeKind, target: Place): ChangeAt | null {
  const facts: ChangeFacts = changeCatalogue[kind];
  if (facts.target === 'link') {
    const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
    return link === undefined ? null : madeTo(facts, link);
  }
  if (facts.target === 'chain') return madeTo(facts, chain);
  if (facts.target === 'place')
    return placeExists(chain, target) ? madeTo(facts, { chain, place: target }) : null;
  const deviceId = target.kind === facts.target ? target.deviceId : '';
  const device = findDevice(chain, deviceId);
  if (device === undefined) return null;
  if (facts.target === 'device') return madeTo(facts, device);
  const port = target.kind === 'port' ? findPort(chain, target) : undefined;
  return port === undefined ? null : madeTo(facts, { device, port });
}

type Made<At> = {
  whyNot: (scene: Scene, at: At) => Message | null;
  needsAt: (at: At) => Message[];
  cautionsAt: (at: At) => Caution[];
  kit: readonly KitItem[] | ((at: At) => KitItem[]);
};
const madeTo = <At>({ whyNot, needsAt, cautionsAt, kit }: Made<At>, at: At): ChangeAt => ({
  whyNot: (scene) => whyNot(scene, at),
  needs: () => needsAt(at),
  cautions: () => cautionsAt(at),
  kit: () => (typeof kit === 'function' ? kit(at) : kit),
});

/** Why a change makes no sense at a place; null when it does. */
export function whyNotAt(scene: Scene, kind: ChangeKind, target: Place): Message | null {
  const { target: wanted } = changeCatalogue[kind];
  if (wanted !== 'place' && target.kind !== wanted) return message(doneTo[wanted], { change: kind });
  const there = changeAt(scene.chain, kind, target);
  return there === null ? message('nothingUnderThatId') : there.whyNot(scene);
}

/** What a place adds to what a change needs. */
export const needsAt = (chain: Chain, kind: ChangeKind, target: Place): Message[] =>
  changeAt(chain, kind, target)?.needs() ?? [];

/** What a place adds to what to take care of. */
export const cautionsAt = (chain: Chain, kind: ChangeKind, target: Place): Caution[] =>
  changeAt(chain, kind, target)?.cautions() ?? [];

/** What a change at a place takes. */
export const kitFor = (chain: Chain, kind: ChangeKind, target: Place): readonly KitItem[] =>
  changeAt(chain, kind, target)?.kit() ?? [];
