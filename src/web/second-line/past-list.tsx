import type { PastCase } from '../../../shared/contract/past-case.ts';
import { List, ListLink } from '../parts/card.tsx';
import { typed } from '../parts/typed.tsx';
import { endedWords } from '../words/ended-words.ts';
import { Sentence } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { day } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { pastWords } from './past-words.ts';

/** Closed cases: what each was, what was done, and what it has in common with the one at hand. */
export function PastList({ cases }: { cases: readonly PastCase[] }) {
  return (
    <List>
      {cases.map((one) => (
        <PastEntry key={one.id} one={one} />
      ))}
    </List>
  );
}

function PastEntry({ one }: { one: PastCase }) {
  const t = pastWords();
  const zone = useZone(one.siteId);
  return (
    <ListLink href={`/app/cases/${one.id}`}>
      <strong>
        {one.number}. {one.client}: {terms().symptom[one.symptom]}
      </strong>
      <span>
        {one.culprit === null ? t.nothingNamed : <Sentence>{one.culprit}</Sentence>}
        {one.explanation !== '' && <> · {typed(one.explanation)}</>}
      </span>
      {one.remedy !== null && (
        <span>
          {endedWords().kinds[one.remedy.kind]}: {typed(one.remedy.what)}
        </span>
      )}
      <span class="soft">
        {[t.closed(day(one.closedAt, zone)), one.chainName].join(' · ')}
        {one.common !== null && ` · ${t.common}: ${commonSaid(one.common).join(', ')}`}
      </span>
    </ListLink>
  );
}

function commonSaid({ symptom, culprit, models }: NonNullable<PastCase['common']>): string[] {
  const t = pastWords();
  return [...(symptom ? [t.sameSymptom] : []), ...(culprit ? [t.sameCulprit] : []), ...models];
}
