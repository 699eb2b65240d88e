import { useState } from 'preact/hooks';
import { addresses } from '../../../shared/contract/addresses.ts';
import { shortest } from '../../../shared/contract/limits.ts';
import type { Member } from '../../../shared/contract/people.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { Field } from '../parts/field.tsx';
import { NewPassword } from '../parts/new-password.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh } from '../store/documents.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: {
    title: 'Password',
    current: 'The password until now',
    next: 'The new password',
    hint: (count: number) =>
      `${count} characters or more. A few words that nobody would connect with you do well.`,
    change: 'Change the password',
    changed: 'Changed. Wherever else you were signed in, you are signed out.',
  },
  de: {
    title: 'Passwort',
    current: 'Das bisherige Passwort',
    next: 'Das neue Passwort',
    hint: (count) => `Mindestens ${count} Zeichen. Gut sind ein paar Wörter, die niemand mit dir verbindet.`,
    change: 'Passwort ändern',
    changed: 'Geändert. Wo du sonst noch angemeldet warst, bist du abgemeldet.',
  },
});

/** A member changes their own password, which ends their other sign-ins. */
export function OwnPassword() {
  const words = t();
  const [typed, setTyped] = useState({ current: '', password: '' });
  const [isChanged, setChanged] = useState(false);
  const sending = useSending();
  const save = async (): Promise<void> => {
    setChanged(false);
    const done = await sending.send<Member>('POST', addresses.ownPassword, { body: typed });
    if (done === null) return;
    setTyped({ current: '', password: '' });
    setChanged(true);
    await refresh(paths.ownSessions);
  };
  return (
    <Card title={words.title}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <Field
          label={words.current}
          type="password"
          required
          autocomplete="current-password"
          value={typed.current}
          onInput={({ currentTarget }) => setTyped({ ...typed, current: currentTarget.value })}
        />
        <NewPassword
          label={words.next}
          hint={words.hint(shortest.password)}
          value={typed.password}
          onType={(password) => setTyped({ ...typed, password })}
        />
        <SendingResult sending={sending} />
        {isChanged && (
          <Notice tone="good" announce>
            {words.changed}
          </Notice>
        )}
        <div>
          <Button type="submit" disabled={sending.isBusy}>
            {words.change}
          </Button>
        </div>
      </form>
    </Card>
  );
}
