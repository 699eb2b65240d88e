import { useEffect, useState } from 'preact/hooks';
import { paths } from '../../api/paths.ts';
import { useDocument } from '../../store/documents.ts';
import { type BegunCall, begunCalls } from './begun-calls.ts';
import { callWords } from './words.ts';

/** Other calls that were begun here and are no tickets yet, each a tap away. */
export function OtherCalls({ id }: { id: string }) {
  const t = callWords();
  const [calls, setCalls] = useState<readonly BegunCall[]>([]);
  useEffect(() => {
    let isHere = true;
    void begunCalls().then((begun) => isHere && setCalls(begun.filter((call) => call.id !== id)));
    return () => {
      isHere = false;
    };
  }, [id]);
  if (calls.length === 0) return null;
  return (
    <section class="stack not-printed" aria-label={t.otherCalls}>
      <h2>{t.otherCalls}</h2>
      <ul class="plain-list">
        {calls.map((call) => (
          <OtherCall key={call.id} call={call} />
        ))}
      </ul>
    </section>
  );
}

function OtherCall({ call: { id, siteId, typed, isInOtherTab } }: { call: BegunCall }) {
  const t = callWords();
  const site = useDocument(siteId === null ? null : paths.site(siteId)).body;
  const who = site?.client ?? typed;
  return (
    <li>
      {isInOtherTab ? (
        <span>{t.inOtherTab(who)}</span>
      ) : (
        <a href={`/app/call?call=${id}`}>{t.goOnWith(who)}</a>
      )}
    </li>
  );
}
