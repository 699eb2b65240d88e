import { findDevice, findLink, findPort } from '../../../../shared/chain/look-up.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { PlanReply } from '../../../../shared/contract/plan.ts';
import { said } from '../../words/sentence.tsx';

type Suspect = PlanReply['suspects'][number];

/** A place in few words, the same in every language: `Receiver OUT 1 → Projector HDMI 1 (C4)`. */
export function placeWords(chain: Chain, place: Place): string {
  switch (place.kind) {
    case 'chain':
      return chain.name;
    case 'device':
      return nameOf(chain, place.deviceId);
    case 'port':
      return socketOf(chain, place);
    case 'link': {
      const link = findLink(chain, place.linkId);
      return link === undefined
        ? place.linkId
        : `${socketOf(chain, link.from)} → ${socketOf(chain, link.to)} (${link.id})`;
    }
  }
}

const nameOf = (chain: Chain, deviceId: string): string => findDevice(chain, deviceId)?.name ?? deviceId;
const socketOf = (chain: Chain, ref: { deviceId: string; portId: string }): string =>
  `${nameOf(chain, ref.deviceId)} ${findPort(chain, ref)?.label ?? ref.portId}`;

/** A suspect in few words: its place where it has one. */
export function suspectWords(chain: Chain, suspect: Pick<Suspect, 'place' | 'name'>): string {
  return suspect.place === null ? said(suspect.name).text : placeWords(chain, suspect.place);
}
