import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { describeKept } from '../../../state-machines/triage/describe-look.ts';
import { isWithoutSide } from '../../../state-machines/triage/record.ts';
import { typed } from '../parts/typed.tsx';
import { Sentence } from '../words/sentence.tsx';

/** What was looked at without changing anything, newest last, and that work went on without a side. */
export function LookList({ triage, chain }: { triage: TriageRecord; chain: Chain | null }) {
  const found = triage.asFound?.chain ?? chain;
  if (found === null) return null;
  return (
    <>
      {isWithoutSide(triage) && triage.withoutSide !== null && (
        <p>
          <Sentence>{message('workedWithoutSide', { reason: triage.withoutSide.reason })}</Sentence>
        </p>
      )}
      <ul class="list">
        {triage.looks.map((look) => {
          const said = <Sentence>{describeKept(look, (place) => namedPlace(found, place))}</Sentence>;
          return (
            <li key={look.id}>
              {look.withdrawn === null ? (
                said
              ) : (
                <>
                  <s>{said}</s> {typed(look.withdrawn.reason)}
                </>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}
