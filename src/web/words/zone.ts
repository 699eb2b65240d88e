import { paths } from '../api/paths.ts';
import { useDocument } from '../store/documents.ts';

/** The time zone that a site's times are shown in: its own, else the organisation's. Null: the organisation's. */
export function useZone(siteId: string | null): string {
  const site = useDocument(siteId === null ? null : paths.site(siteId)).body;
  const organisation = useDocument(paths.organisation).body;
  return site?.timeZone ?? organisation?.settings.timeZone ?? 'UTC';
}
