import { fullAudit } from '../../shared/audit/full-audit.ts';
import { displaysOf } from '../../shared/chain/graph.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import type { Symptom } from '../../shared/contract/triage.ts';
import { cablesBehindVersionMessage, chainProtection } from '../../shared/signal/content-protection/index.ts';
import { chainBudget } from '../../shared/signal/link-budget/index.ts';
import { powerBudget } from '../../shared/signal/power.ts';
import { chainsToSpeakOf, minimumFirmware } from './bad-chains.ts';

/** All that is said of a chain on paper: its audit, before and during triage, and what is computed of it. */
export function saidOfChains(): Set<string> {
  return new Set(chainsToSpeakOf().flatMap(saidOfChain));
}

function saidOfChain(chain: Chain): string[] {
  const [display] = displaysOf(chain);
  const symptom: Symptom['kind'] = 'noPicture';
  const purposes = [
    { duringTriage: true, symptom },
    { duringTriage: true, symptom, ...(display === undefined ? {} : { displayId: display.id }) },
  ];
  const findings = purposes.flatMap((purpose) => fullAudit(chain, purpose, {}, minimumFirmware));
  const budget = chainBudget(chain, []);
  return [
    ...findings.flatMap(({ text, whatToDo, caution, placeName, source }) => [
      text,
      whatToDo,
      placeName,
      source,
      ...(caution === null ? [] : [caution]),
    ]),
    ...budget.wanted.map(({ sentence }) => sentence),
    ...budget.links.flatMap(({ name, wanted, elements }) => [
      name,
      ...wanted.map(({ sentence }) => sentence),
      ...elements.flatMap(({ doubts }) => doubts),
    ]),
    ...powerBudget(chain).map(({ sentence }) => sentence),
    ...(['type0', 'type1'] as const).flatMap((demand) => {
      const { hops, displays, topology } = chainProtection(chain, demand);
      return [...hops, ...displays, ...topology].map(({ sentence }) => sentence);
    }),
    ...displaysOf(chain).flatMap(({ id }) =>
      cablesBehindVersionMessage(chain, id).map(({ sentence }) => sentence),
    ),
  ];
}
