import { findDevice, findLink } from '../../../shared/chain/look-up.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { PastCase } from '../../../shared/contract/past-case.ts';

/** What of a case it is compared by. */
export type Compared = {
  readonly symptom: string;
  readonly chain: Chain | null;
  /** Where the culprit is; null where none is named. */
  readonly culprit: Place | null;
};
type Common = NonNullable<PastCase['common']>;

const modelsOf = (chain: Chain | null): Set<string> =>
  new Set((chain?.devices ?? []).flatMap(({ model }) => model ?? []));

/** What a part is of whatever chain it is in: a device's model, or what a cable is made of and certified for. */
function kindOfPart(chain: Chain | null, place: Place | null): string | null {
  if (chain === null || place === null || place.kind === 'chain') return null;
  if (place.kind === 'link') {
    const link = findLink(chain, place.linkId);
    return link === undefined ? null : `${link.construction} ${link.category}`;
  }
  return findDevice(chain, place.deviceId)?.model ?? null;
}

const kindsOfParts = (chain: Chain | null): Set<string> =>
  new Set([
    ...modelsOf(chain),
    ...(chain?.links ?? []).map(({ construction, category }) => `${construction} ${category}`),
  ]);

/** What a past case has in common with the one at hand. */
export function commonOf(now: Compared, past: Compared): Common {
  const here = modelsOf(now.chain);
  const culprit = kindOfPart(past.chain, past.culprit);
  const wanted = kindOfPart(now.chain, now.culprit);
  return {
    symptom: now.symptom === past.symptom,
    models: [...modelsOf(past.chain)].filter((model) => here.has(model)),
    culprit:
      culprit !== null && (wanted === null ? kindsOfParts(now.chain).has(culprit) : culprit === wanted),
  };
}

/** How much two cases are alike; 0 for not at all. The weights are assumed: what it was counts more than where it stood. */
export const likenessOf = ({ symptom, models, culprit }: Common): number =>
  symptom || models.length > 0 ? (symptom ? 3 : 0) + (culprit ? 3 : 0) + Math.min(3, models.length) : 0;
