import { useState } from 'preact/hooks';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { SecondStep } from '../../../shared/contract/people.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { kindOfType } from '../../../shared/contract/problem-type.ts';
import { signIn } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { frameWords } from '../words/frame.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: {
    what: 'The password is right. Now the code that your authenticator app shows for this organisation.',
    code: 'Code',
    codeHint: 'Six digits; or, if you have lost the app, one of your codes for recovery.',
    submit: 'Sign in',
    busy: 'Signing in …',
    back: 'Begin again with the password',
    lost: 'Neither is at hand? An admin of your organisation can take the second step off your account.',
  },
  de: {
    what: 'Das Passwort stimmt. Jetzt der Code, den deine Authenticator-App für diese Organisation zeigt.',
    code: 'Code',
    codeHint: 'Sechs Ziffern; oder, wenn die App weg ist, einer deiner Wiederherstellungscodes.',
    submit: 'Anmelden',
    busy: 'Melde an …',
    back: 'Noch einmal mit dem Passwort beginnen',
    lost: 'Beides nicht zur Hand? Ein Admin deiner Organisation kann den zweiten Schritt von deinem Konto nehmen.',
  },
});

/** What somebody shows beside their password. `onBack` with the problem, where the password has to be shown again. */
export function SecondStepForm({
  step,
  onDone,
  onBack,
}: {
  step: SecondStep;
  onDone: () => void;
  onBack: (problem: Problem | null) => void;
}) {
  const words = t();
  const [code, setCode] = useState('');
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Problem | 'unreachable' | null>(null);
  const submit = async (): Promise<void> => {
    setBusy(true);
    const result = await signIn(addresses.secondStep, { token: step.token, code });
    setBusy(false);
    if (result === null) onDone();
    else if (result !== 'unreachable' && kindOfType(result.type) === 'sign-in-refused') onBack(result);
    else setRefused(result);
  };
  return (
    <form
      class="stack narrow"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <p>{words.what}</p>
      {refused === 'unreachable' && (
        <Notice tone="caution" announce>
          {frameWords().noAnswer}
        </Notice>
      )}
      {refused !== null && refused !== 'unreachable' && <Refusal problem={refused} />}
      <Field
        label={words.code}
        hint={words.codeHint}
        name="code"
        required
        autofocus
        autocomplete="one-time-code"
        autocapitalize="characters"
        spellcheck={false}
        value={code}
        onInput={({ currentTarget }) => setCode(currentTarget.value)}
      />
      <Button type="submit" kind="primary" large disabled={busy}>
        {busy ? words.busy : words.submit}
      </Button>
      <p class="soft">{words.lost}</p>
      <div>
        <Button onClick={() => onBack(null)}>{words.back}</Button>
      </div>
    </form>
  );
}
