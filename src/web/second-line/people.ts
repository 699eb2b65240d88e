import { paths } from '../api/paths.ts';
import { useDocument } from '../store/documents.ts';

/** Gives a member's name for their id; the id where nobody has that. */
export function useNames(): (id: string | null) => string {
  const members = useDocument(paths.members).body?.items ?? [];
  return (id) => members.find((member) => member.id === id)?.name ?? id ?? '';
}
