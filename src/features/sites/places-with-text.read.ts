import type { Context } from '../../http/index.ts';
import type { WordForms } from '../../http/search-words.ts';

/** Sites whose own text holds a word, and chains whose text does; ids. */
export type PlacesWithWord = { readonly siteIds: readonly string[]; readonly chainIds: readonly string[] };

/** Assumed: where a word is in more texts than this, a page of what has it is found by reading on from its start. */
const most = 1_000;

/**
 * Where in the organisation a word is found, in any of its forms, by index: see the migration 20261130220000_search.
 * Null where it is found in so many places that their ids are of no use.
 */
export async function placesWithWord({ tx }: Context, forms: WordForms): Promise<PlacesWithWord | null> {
  const patterns = forms.map((form) => `%${form}%`);
  const [sites, chains] = await Promise.all([
    tx.sql<{ id: string }>`select id from found_sites(${patterns}::text[], ${most}::int) as found (id)`,
    tx.sql<{ id: string }>`select id from found_chains(${patterns}::text[], ${most}::int) as found (id)`,
  ]);
  if (sites.length === most || chains.length === most) return null;
  return { siteIds: sites.map(({ id }) => id), chainIds: chains.map(({ id }) => id) };
}
