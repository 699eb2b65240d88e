import { useEffect, useState } from 'preact/hooks';
import type { SiteSummary } from '../../../../shared/contract/site.ts';
import { read } from '../../api/client.ts';
import { paths } from '../../api/paths.ts';

export type SiteSearch = {
  readonly found: readonly SiteSummary[];
  readonly state: 'idle' | 'searching' | 'found' | 'unreachable';
};
/** Assumed: a pause this long between two letters is worth asking. */
const pauseMs = 120;

/** Sites by any part of name, phone, address or serial, while it is typed; only the answer to the last letter counts. */
export function useSiteSearch(typed: string): SiteSearch {
  const [search, setSearch] = useState<SiteSearch>({ found: [], state: 'idle' });
  const q = typed.trim();
  useEffect(() => {
    if (q === '') {
      setSearch({ found: [], state: 'idle' });
      return undefined;
    }
    let wanted = true;
    setSearch(({ found }) => ({ found, state: 'searching' }));
    const timer = setTimeout(async () => {
      const answer = await read(paths.sites({ q, limit: 8 }));
      if (!wanted) return;
      if (answer.kind === 'ok') setSearch({ found: answer.body.items, state: 'found' });
      else setSearch({ found: [], state: 'unreachable' });
    }, pauseMs);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [q]);
  return search;
}
