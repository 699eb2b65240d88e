import type { ComponentChildren } from 'preact';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult } from '../parts/sending.tsx';
import { Wipe } from '../parts/wipe.tsx';
import { frameWords } from '../words/frame.ts';
import type { SectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

/** The end of a form of the firm's settings: what came of sending it, the button that saves, and the way back. */
export function SaveRow<Fields extends object>({
  settings: { sending, isSaved },
  draft,
  disabled = false,
  children,
}: {
  settings: Pick<ReturnType<typeof useSettings>, 'sending' | 'isSaved'>;
  draft: SectionDraft<Fields>;
  disabled?: boolean;
  children?: ComponentChildren;
}) {
  return (
    <>
      {draft.isOverOlder && <Notice tone="caution">{adminWords().savedMeanwhile}</Notice>}
      <SendingResult sending={sending} />
      {isSaved && (
        <Notice tone="good" announce>
          {frameWords().saved}
        </Notice>
      )}
      <div class="save-row row">
        <Button type="submit" kind="primary" disabled={sending.isBusy || disabled}>
          {frameWords().save}
        </Button>
        <Wipe
          label={adminWords().asSaved}
          draft={draft.typed}
          empty={{}}
          onWipe={draft.forget}
          onUndo={draft.bringBack}
        />
        {children}
      </div>
    </>
  );
}
