import { displaysOf, sourcesOf } from '../../shared/chain/graph.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import { symptomKinds, whatChangedKinds } from '../../shared/contract/triage.ts';
import { type Case, type FindingInput, plainCase } from '../../shared/isolation/case.ts';
import type { WatchRecord } from '../../shared/isolation/quiet-length.ts';
import { message } from '../../shared/message/index.ts';
import { randomFrom } from '../support/random.ts';
import { untoldPattern } from '../support/untold-pattern.ts';

const baselines: readonly WatchRecord[] = [
  { mode: 'time', minutes: 60, occurrences: 3 },
  { mode: 'time', minutes: 20, occurrences: 3 },
  { mode: 'time', minutes: 45, occurrences: 4 },
  { mode: 'trigger', tries: 4, failures: 3 },
  { mode: 'trigger', tries: 3, failures: 3 },
  { mode: 'trigger', tries: 10, failures: 4 },
];
const rules = ['certification', 'length-long', 'seating', 'port-mode', 'edid-management', 'firmware-level'];

/** A reproduced case on a chain: what the client says and the audit finds is drawn from the seed. */
export function caseOn(chain: Chain, seed: number): Case {
  const random = randomFrom(seed);
  const one = <Item>(items: readonly Item[]): Item => {
    const item = items[Math.floor(random() * items.length)];
    if (item === undefined) throw new Error('Nothing to choose from.');
    return item;
  };
  const sources = sourcesOf(chain);
  const displays = displaysOf(chain);
  const findings = Array.from({ length: Math.floor(random() * 3) }, (): FindingInput => {
    const rule = one(rules);
    const onLink = ['certification', 'length-long', 'seating'].includes(rule);
    return {
      rule,
      text: message('lookAtBothEnds'),
      severity: one(['mustFix', 'shouldFix', 'note'] as const),
      place: onLink
        ? { kind: 'link', linkId: one(chain.links).id }
        : { kind: 'device', deviceId: one(chain.devices).id },
    };
  });
  // half of the clients can say which source shows it, and on a chain of several displays which of them
  const tellsSource = random() < 0.5 && sources.length > 1;
  return {
    ...plainCase(chain, { kind: one(symptomKinds), perHour: null, lastsS: null, ...untoldPattern }),
    affectedSources: tellsSource ? [one(sources).id] : [],
    affectedDisplays: displays.length > 1 ? [one(displays).id] : [],
    content: one(['notKnown', 'any', 'highRateOnly'] as const),
    whatChanged: [{ kind: one(whatChangedKinds) }],
    findings,
    baseline: one(baselines),
  };
}
