import { useState } from 'preact/hooks';
import type { Organisation, OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { paths } from '../api/paths.ts';
import { type Sending, useSending } from '../parts/sending.tsx';
import { keepDocument, refresh, useDocument } from '../store/documents.ts';

/** The firm's settings and a way to change some of them, against the version that was shown. */
export function useSettings() {
  const document = useDocument(paths.organisation);
  const sending: Sending = useSending();
  const [isSaved, setSaved] = useState(false);
  return {
    document,
    sending,
    /** Until something is changed again. */
    isSaved,
    touch: () => setSaved(false),
    /** @returns whether it was accepted */
    save: async (part: Partial<OrganisationSettings>, name?: string): Promise<boolean> => {
      const { body, etag } = document;
      if (body === null) return false;
      const done = await sending.send<Organisation>('PUT', paths.organisation, {
        body: { name: name ?? body.name, settings: { ...body.settings, ...part } },
        ifMatch: etag ?? '',
      });
      if (done === null) {
        void refresh(paths.organisation);
        return false;
      }
      await keepDocument({
        path: paths.organisation,
        body: done.body,
        etag: done.etag,
        readAt: new Date().toISOString(),
      });
      void refresh(paths.faultModel);
      setSaved(true);
      return true;
    },
  };
}
