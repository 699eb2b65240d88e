import { useEffect, useRef, useState } from 'preact/hooks';
import { session } from '../api/session.ts';
import { onTabMessage, tellTabs } from './channel.ts';
import { memberDatabase } from './member-database.ts';
import { dropTyped, holdTyped, typedLast } from './typed-last.ts';

const memberId = (): string => session.peek()?.member.id ?? '';

/**
 * A form half filled in, kept on this device over a reload, a closed tab or a dead battery until it is sent.
 * @returns null as draft until the device's store was read; what is typed before that stands
 */
export function useDraft<Draft extends object>(name: string, empty: Draft) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const newest = useRef<Draft | null>(null);
  const touched = useRef(false);
  const take = (next: Draft): void => {
    newest.current = next;
    setDraft(next);
  };
  useEffect(() => {
    touched.current = false;
    let isWanted = true;
    void memberDatabase()
      .then((database) => database?.get('drafts', name))
      .then((kept) => {
        if (!isWanted || touched.current) return;
        take({ ...empty, ...(kept as Partial<Draft> | undefined), ...typedLast(memberId(), name) });
      });
    // The same form in another tab: what is typed there stands here, too.
    const release = onTabMessage((message) => {
      if (message.kind !== 'draft' || message.name !== name || message.memberId !== memberId()) return;
      void memberDatabase()
        .then((database) => database?.get('drafts', name))
        .then((kept) => isWanted && take({ ...empty, ...(kept as Partial<Draft> | undefined) }));
    });
    return () => {
      isWanted = false;
      release();
    };
  }, [name]);
  return {
    draft,
    change: (part: Partial<Draft>): void => {
      touched.current = true;
      const next = { ...(newest.current ?? empty), ...part };
      take(next);
      const release = holdTyped(memberId(), name, next);
      void memberDatabase()
        .then((database) => database?.put('drafts', next, name))
        .then(() => {
          release();
          tellTabs({ kind: 'draft', memberId: memberId(), name });
        })
        // What the database doesn't take stays where it was typed to.
        .catch(() => undefined);
    },
    clear: async (): Promise<void> => {
      touched.current = true;
      take(empty);
      dropTyped(memberId(), name);
      await (await memberDatabase())?.delete('drafts', name);
      tellTabs({ kind: 'draft', memberId: memberId(), name });
    },
  };
}

/** The same for a form that is drawn at once: empty until the device's store was read. */
export function useDraftForm<Draft extends object>(
  name: string,
  empty: Draft,
): [Draft, (part: Partial<Draft>) => void, () => Promise<void>] {
  const { draft, change, clear } = useDraft(name, empty);
  return [draft ?? empty, change, clear];
}

/** Every form half filled in whose name begins so, by its name. */
export async function draftsNamed(prefix: string): Promise<[string, unknown][]> {
  const database = await memberDatabase();
  const names = (await database?.getAllKeys('drafts')) ?? [];
  const wanted = names.filter((name) => name.startsWith(prefix));
  return Promise.all(
    wanted.map(async (name) => [name, await database?.get('drafts', name)] as [string, unknown]),
  );
}
