import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { ChangeKind } from '../../../shared/contract/triage.ts';
import type { Scene } from '../../../shared/isolation/change-facts.ts';
import { doneTo, whyNotOnSide } from '../../../shared/isolation/change-places.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { type Parts, placesAt } from './places.ts';

/** A change of a kind at a place; `own` says which of an organisation's kinds it is. */
export type Made = { kind: ChangeKind; target: Place; own?: OwnChange | null | undefined };

/** An organisation's own kind is made to one kind of place, on the side that the fault lies on. */
export const whyNotOwn = (scene: Scene, { actsOn, name }: OwnChange, target: Place): Message | null =>
  target.kind === actsOn ? whyNotOnSide(scene, target) : message(doneTo[actsOn], { change: { own: name } });

/** The organisation's own kinds, wherever each can be made. */
export const ownIn = (
  scene: Scene & { parts: Parts },
  ownChanges: readonly OwnChange[],
): (Made & { own: OwnChange })[] =>
  ownChanges.flatMap((own) =>
    placesAt(scene.chain, own.actsOn, scene.parts)
      .filter((target) => whyNotOwn(scene, own, target) === null)
      .map((target) => ({ kind: 'ownKind', target, own })),
  );

/** What an organisation has said of its own kind, at a place. */
export const describeOwn = (chain: Chain, { target, own }: Pick<Made, 'target'> & { own: OwnChange }) => ({
  text: message('changeAt', { change: { own: own.name }, place: namedPlace(chain, target) }),
  diagnostic: !own.mayStay,
  needs: own.kit === '' ? [] : [message('asWritten', { sentence: own.kit })],
  instructions: message('changeInstructions', { change: { own: own.name } }),
  afterwards: message('changeAfterwards', { change: { own: own.name } }),
});
