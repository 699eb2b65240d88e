import { useCallback } from 'preact/hooks';
import { paths } from '../api/paths.ts';
import { useDocument } from '../store/documents.ts';

/** Gives a member's name for their id; the id where nobody has that. The same function while the members are. */
export function useNames(): (id: string | null) => string {
  const members = useDocument(paths.members).body?.items;
  return useCallback((id) => members?.find((member) => member.id === id)?.name ?? id ?? '', [members]);
}
