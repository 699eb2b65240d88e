import { kitKey, kitMessage } from '../../../shared/isolation/kit.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { useKit } from './common/kit.ts';
import { technicianWords } from './words.ts';

/** The packing list of a visit, to be ticked at the van. */
export function KitList({ ticketId }: { ticketId: string }) {
  const t = technicianWords();
  const plan = useDocument(paths.phonePlan(ticketId, [])).body;
  const kit = useKit(ticketId);
  const van = (plan?.van ?? []).toSorted((a, b) => b.probability - a.probability);
  const planned = new Set(van.map(({ item }) => kitKey(item)));
  // Ticked earlier, for a plan that has since moved on: it is in the van all the same.
  const others = (kit.ticked ?? []).filter((item) => !planned.has(kitKey(item)));
  if (plan === null && others.length === 0) return null;
  const all = [...van, ...others.map((item) => ({ item, probability: null }))];
  if (all.length === 0) return <p>{t.kitNone}</p>;
  return (
    <div class="stack">
      <p class="soft">{t.kitLead}</p>
      <ul class="ticks">
        {all.map(({ item, probability }) => (
          <li key={kitKey(item)}>
            <label class="choice">
              <input
                type="checkbox"
                checked={kit.has(item)}
                onChange={({ currentTarget }) => void kit.tick(item, currentTarget.checked)}
              />
              <span class="ticks-words">
                <span>{inWords(kitMessage(item))}</span>
                {probability !== null && (
                  <span class="soft">{t.chance(Math.max(1, Math.round(probability * 100)))}</span>
                )}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <div class="row">
        <span role="status" aria-busy={!kit.isKept}>
          {kit.ticked === null
            ? t.kitNotSaid
            : t.kitTicked(all.filter(({ item }) => kit.has(item)).length, all.length)}
        </span>
        {kit.ticked !== null && (
          <Button kind="quiet" onClick={() => void kit.setAll(null)}>
            {t.kitForget}
          </Button>
        )}
      </div>
    </div>
  );
}
