import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { EvidenceTie } from '../../../../shared/contract/evidence.ts';
import { Notice } from '../../parts/notice.tsx';
import { captureWords } from './capture-words.ts';
import { keepPhotos, type OnTicket } from './keep-files.ts';

type Properties = {
  ticket: OnTicket;
  tie: Partial<EvidenceTie>;
  /** Several pictures that are there already, instead of the camera. */
  fromGallery?: boolean;
  kind?: 'plain' | 'primary';
  /** What is said of it to those who don't see what it stands beside. */
  label?: string;
  children: ComponentChildren;
};
type Progress = { kept: number; of: number; failed: boolean };

/**
 * A button that is the camera: what is taken belongs to the place that it stands at, is made small and put into the
 * outbox. Tap it again for the next one.
 */
export function CaptureButton({
  ticket,
  tie,
  fromGallery = false,
  kind = 'plain',
  label,
  children,
}: Properties) {
  const t = captureWords();
  const [progress, setProgress] = useState<Progress | null>(null);
  const isBusy = progress !== null && progress.kept < progress.of && !progress.failed;
  const take = async (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])];
    input.value = '';
    if (files.length === 0) return;
    const before = progress?.failed === false ? progress.kept : 0;
    const of = before + files.length;
    setProgress({ kept: before, of, failed: false });
    const onKept = (count: number) => setProgress({ kept: before + count, of, failed: false });
    await keepPhotos(ticket, files, { tie, onKept }).catch(() =>
      setProgress((now) => ({ kept: now?.kept ?? 0, of, failed: true })),
    );
  };
  return (
    <div class="capture">
      <label class={`button button-${kind} capture-button`}>
        <input
          class="for-readers-only"
          type="file"
          accept="image/*"
          multiple
          {...(fromGallery ? {} : { capture: 'environment' as const })}
          {...(label === undefined ? {} : { 'aria-label': label })}
          disabled={isBusy}
          onChange={({ currentTarget }) => void take(currentTarget)}
        />
        {children}
      </label>
      <span role="status" class="soft">
        {progress !== null && !progress.failed && t.kept(progress.kept, progress.of)}
      </span>
      {progress?.failed === true && (
        <Notice tone="refusal" announce>
          <strong>{t.notKept}</strong>
          <span>{t.notKeptHelp}</span>
        </Notice>
      )}
    </div>
  );
}
