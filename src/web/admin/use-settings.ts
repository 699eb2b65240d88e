import { useState } from 'preact/hooks';
import type { Organisation, OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { paths } from '../api/paths.ts';
import { type Sending, useSending } from '../parts/sending.tsx';
import { keepDocument, refresh, useDocument } from '../store/documents.ts';
import { useDraft } from '../store/use-draft.ts';

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

/** A section's fields as they are typed, kept on this device until they are saved or wiped. */
export type SectionDraft<Fields extends object> = {
  /** As they were saved last, with what was typed since. */
  readonly fields: Fields;
  readonly typed: Partial<Fields>;
  /** Somebody saved other settings since this was begun. */
  readonly isOverOlder: boolean;
  change(part: Partial<Fields>): void;
  forget(): Promise<void>;
  /** Puts back what `forget` took away. */
  bringBack(typed: Partial<Fields>): void;
};

/** @returns null until this device's store was read: a row added before that would take the place of what is kept */
export function useSectionDraft<Fields extends object>(
  section: string,
  saved: { fields: Fields; version: number },
): SectionDraft<Fields> | null {
  const {
    draft,
    change: write,
    clear: forget,
  } = useDraft<{ over: number | null; typed: Partial<Fields> }>(`section ${section}`, {
    over: null,
    typed: {},
  });
  if (draft === null) return null;
  const { over, typed } = draft;
  return {
    fields: { ...saved.fields, ...typed },
    typed,
    isOverOlder: over !== null && over !== saved.version,
    change: (part) => write({ over: over ?? saved.version, typed: { ...typed, ...part } }),
    forget,
    bringBack: (before) => write({ over: saved.version, typed: before }),
  };
}
