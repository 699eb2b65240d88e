import type { Context } from '../../http/index.ts';
import type { WordForms } from '../../http/search-words.ts';

/** Assumed, as for places: where a word is in more cases than this, a page is found by reading on from its start. */
const most = 1_000;

/**
 * Closed tickets in what is known of which a word is found, in any of its forms, by index: see the migration
 * 20261201010000_past_cases. Null where they are so many that their ids are of no use.
 */
export async function pastWithWord({ tx }: Context, forms: WordForms): Promise<readonly string[] | null> {
  const patterns = forms.map((form) => `%${form}%`);
  const found = await tx.sql<{
    id: string;
  }>`select id from found_past(${patterns}::text[], ${most}::int) as found (id)`;
  return found.length === most ? null : found.map(({ id }) => id);
}
