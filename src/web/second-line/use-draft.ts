import { useEffect, useState } from 'preact/hooks';
import { memberDatabase } from '../store/member-database.ts';

/** A form half filled in, kept on this device over a reload. `forget` takes it away once it was sent. */
export function useDraft<Draft extends object>(
  key: string,
  empty: Draft,
): [Draft, (part: Partial<Draft>) => void, () => void] {
  const [draft, setDraft] = useState(empty);
  useEffect(() => {
    let wanted = true;
    void memberDatabase()
      .then((database) => database?.get('drafts', key))
      .then((kept) => {
        if (wanted && kept !== undefined) setDraft({ ...empty, ...(kept as Draft) });
      });
    return () => {
      wanted = false;
    };
  }, [key]);
  const change = (part: Partial<Draft>) => {
    const next = { ...draft, ...part };
    setDraft(next);
    void memberDatabase().then((database) => database?.put('drafts', next, key));
  };
  const forget = () => {
    setDraft(empty);
    void memberDatabase().then((database) => database?.delete('drafts', key));
  };
  return [draft, change, forget];
}
