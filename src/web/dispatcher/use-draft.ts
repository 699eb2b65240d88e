import { useEffect, useRef, useState } from 'preact/hooks';
import { memberDatabase } from '../store/member-database.ts';

/**
 * A form half filled in, which survives reload and a closed tab on this device.
 * @returns null as draft until the device's store was read
 */
export function useDraft<Draft extends object>(name: string, empty: Draft) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const newest = useRef<Draft | null>(null);
  const take = (next: Draft): void => {
    newest.current = next;
    setDraft(next);
  };
  useEffect(() => {
    let wanted = true;
    void memberDatabase()
      .then((database) => database?.get('drafts', name))
      .then((kept) => {
        if (wanted) take({ ...empty, ...(kept as Partial<Draft> | undefined) });
      });
    return () => {
      wanted = false;
    };
  }, [name]);
  return {
    draft,
    change: (part: Partial<Draft>): void => {
      const next = { ...(newest.current ?? empty), ...part };
      take(next);
      void memberDatabase().then((database) => database?.put('drafts', next, name));
    },
    clear: async (): Promise<void> => {
      take(empty);
      await (await memberDatabase())?.delete('drafts', name);
    },
  };
}
