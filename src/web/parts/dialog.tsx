import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { frameWords } from '../words/frame.ts';
import { Button } from './button.tsx';

/** A question on top of the screen. Escape and the last button close it; the focus goes back to where it was. */
export function Dialog({
  title,
  closeLabel = frameWords().close,
  onClose,
  children,
}: {
  title: string;
  /** What the last button says: where the dialog asks something, the other answer. */
  closeLabel?: string;
  onClose: () => void;
  children: ComponentChildren;
}) {
  const element = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog class="dialog" ref={element} aria-labelledby={heading} onClose={onClose}>
      <div class="stack">
        <h2 id={heading}>{title}</h2>
        {children}
        <div>
          <Button onClick={onClose}>{closeLabel}</Button>
        </div>
      </div>
    </dialog>
  );
}
