import { findDevice, findLink, findPort } from '../../../../shared/chain/look-up.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { PlanReply } from '../../../../shared/contract/plan.ts';
import { said } from '../../words/sentence.tsx';
import { number } from '../../words/times.ts';

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

/** A suspect that the plan names in an English phrase, as its place in few words where it has one. */
export function suspectWords(chain: Chain, { suspects }: PlanReply, name: string): string {
  const place = suspects.find((suspect) => suspect.name === name)?.place ?? null;
  return place === null ? said(name).text : placeWords(chain, place);
}

/** A chance as people say it; never a plain 0 or 100, which nothing here is. */
export function percentWords(chance: number): string {
  if (chance > 0.999) return `> ${number(99.9, 1)} %`;
  if (chance < 0.001) return `< ${number(0.1, 1)} %`;
  const value = chance * 100;
  return `${number(value, value < 10 || value > 99 ? 1 : 0)} %`;
}
