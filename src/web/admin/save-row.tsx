import type { ComponentChildren } from 'preact';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult } from '../parts/sending.tsx';
import { frameWords } from '../words/frame.ts';
import type { useSettings } from './use-settings.ts';

/** The end of a form of the firm's settings: what came of sending it, and the button that saves. */
export function SaveRow({
  settings: { sending, isSaved },
  disabled = false,
  children,
}: {
  settings: Pick<ReturnType<typeof useSettings>, 'sending' | 'isSaved'>;
  disabled?: boolean;
  children?: ComponentChildren;
}) {
  return (
    <>
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
        {children}
      </div>
    </>
  );
}
