import { chainDiff } from '../../../shared/chain/diff.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { inWords } from '../words/sentence.tsx';
import { versionWords } from './version-words.ts';

/** What differs between two versions of a chain, a sentence each. */
export function ChainDifferences({ from, to }: { from: Chain; to: Chain }) {
  const changes = chainDiff(from, to);
  return changes.length === 0 ? (
    <p>{versionWords().same}</p>
  ) : (
    <ul>
      {changes.map(({ sentence }) => (
        <li key={messageKey(sentence)}>{inWords(sentence)}</li>
      ))}
    </ul>
  );
}

/** The chain as the repair left it, against as it was found; nothing where no part was put in. */
export function LeftAs({ triage: { asFound, asLeft } }: { triage: TriageRecord }) {
  if (asFound === null || asLeft?.chain === undefined) return null;
  return (
    <section class="left-as">
      <h2>{versionWords().leftAs(asLeft.chainVersion)}</h2>
      <ChainDifferences from={asFound.chain} to={asLeft.chain} />
    </section>
  );
}
