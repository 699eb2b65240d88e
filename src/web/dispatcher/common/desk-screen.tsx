import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { Button } from '../../parts/button.tsx';
import { Facts } from '../../parts/card.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { Screen } from '../../parts/screen.tsx';
import { frameWords } from '../../words/frame.ts';
import { deskWords } from './words.ts';
import './dispatcher.css';

/** Function keys only: no letter does anything while somebody types (WCAG 2.2, 2.1.4). */
const places: Record<string, string> = {
  F2: '/app/call',
  F4: '/app/board',
  F8: '/app/waiting',
  F9: '/app/find',
};

function sendForm(event: KeyboardEvent): void {
  const form =
    document.querySelector<HTMLFormElement>('dialog[open] form') ??
    (document.activeElement?.closest('form') as HTMLFormElement | null | undefined) ??
    document.querySelector<HTMLFormElement>('form[data-main]');
  if (form === null) return;
  event.preventDefault();
  form.requestSubmit();
}

/** A screen of the dispatcher's desk: its keys, and a list of them. Ctrl+Enter sends the form with `data-main`. */
export function DeskScreen({
  title,
  tools,
  children,
}: {
  title: string;
  /** What can be done with the whole screen, beside its keys and printing. */
  tools?: ComponentChildren;
  children: ComponentChildren;
}) {
  const t = deskWords();
  const { route } = useLocation();
  const [showsKeys, setShowsKeys] = useState(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
        sendForm(event);
        return;
      }
      if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
      const place = places[event.key];
      if (place === undefined && event.key !== 'F1') return;
      event.preventDefault();
      if (place !== undefined) route(place);
      else setShowsKeys(true);
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [route]);
  return (
    <Screen title={title}>
      <div class="row not-printed desk-tools">
        {tools}
        <Button onClick={() => print()}>{frameWords().print}</Button>
        <Button onClick={() => setShowsKeys(true)}>{t.keys}</Button>
      </div>
      {children}
      {showsKeys && (
        <Dialog title={t.keys} onClose={() => setShowsKeys(false)}>
          <Facts
            facts={[
              [t.call, <kbd key="k">F2</kbd>],
              [t.board, <kbd key="k">F4</kbd>],
              [t.waiting, <kbd key="k">F8</kbd>],
              [t.find, <kbd key="k">F9</kbd>],
              [t.keySend, <kbd key="k">{t.ctrl}+Enter</kbd>],
              [t.keyList, <kbd key="k">↓ ↑ Enter</kbd>],
              [t.keyChoice, <kbd key="k">{t.space}</kbd>],
              [t.keyClose, <kbd key="k">Esc</kbd>],
              [t.keys, <kbd key="k">F1</kbd>],
            ]}
          />
        </Dialog>
      )}
    </Screen>
  );
}
