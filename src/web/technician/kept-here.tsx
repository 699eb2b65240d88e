import { useEffect, useState } from 'preact/hooks';
import { reachable } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { isVisitKept, readVisitAhead } from './read-ahead.ts';
import { technicianWords } from './words.ts';

/** Reading ahead leaves the screen the time to be drawn. */
const afterTheScreenMs = 400;

/** Reads the visit ahead, and says whether it works without signal: to be known before going in, not inside. */
export function KeptHere({ ticketId }: { ticketId: string }) {
  const t = technicianWords();
  const [state, setState] = useState<'reading' | 'kept' | 'partly'>('reading');
  const canRead = reachable.value;
  const read = async () => {
    setState((await isVisitKept(ticketId)) ? 'kept' : 'reading');
    const isKept = canRead ? await readVisitAhead(ticketId) : await isVisitKept(ticketId);
    setState(isKept ? 'kept' : 'partly');
  };
  useEffect(() => {
    const later = setTimeout(() => void read(), afterTheScreenMs);
    return () => clearTimeout(later);
  }, [ticketId, canRead]);
  if (state === 'partly') {
    return (
      <Notice tone="caution">
        <span>{t.partlyKept}</span>
        <div>
          <Button onClick={() => void read()}>{t.keepRest}</Button>
        </div>
      </Notice>
    );
  }
  return (
    <p role="status" class="kept-here">
      {state === 'kept' ? `✓ ${t.kept}` : `${t.keeping} …`}
    </p>
  );
}
