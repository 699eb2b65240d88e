import { type Site, type SiteInput, siteInput } from '../../../shared/contract/site.ts';
import { message } from '../../../shared/message/index.ts';
import { digitsOf, refused } from '../../http/index.ts';

export const noSite = refused('not-found', message('noSuchSite'));

type SiteRow = { id: string; document: unknown; version: number; createdAt: Date; updatedAt: Date };

/** A site as the API shows it. */
export const siteView = (row: SiteRow): Site => ({
  ...siteInput.parse(row.document),
  id: row.id,
  version: row.version,
  createdAt: row.createdAt.toISOString(),
  updatedAt: row.updatedAt.toISOString(),
});

/** What a search looks through: names and address as written, telephone numbers as bare digits too. */
export function searchTextOf(site: SiteInput): string {
  const { name, phone, email } = site.contact;
  return [site.client, site.address, name, phone, phone === null ? null : digitsOf(phone), email]
    .filter((part) => part !== null)
    .join('\n')
    .toLowerCase();
}
