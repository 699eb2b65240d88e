import { useState } from 'preact/hooks';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { SecondStep } from '../../../shared/contract/people.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { session, signIn } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { Screen } from '../parts/screen.tsx';
import { Tick } from '../parts/tick.tsx';
import { askToKeepData } from '../store/member-database.ts';
import { sendNow } from '../store/sender.ts';
import { wordsOf } from '../words/language.ts';
import { SecondStepForm } from './second-step.tsx';

const t = wordsOf({
  en: {
    title: 'Sign in',
    what: 'For firms that look after cinema and AV chains. Your admin makes your account.',
    show: 'Show what I type',
    organisation: 'Organisation',
    organisationHint: 'The short name of your firm',
    email: 'Email',
    password: 'Password',
    submit: 'Sign in',
    busy: 'Signing in …',
    unreachable: 'No connection to the server. Signing in needs one.',
  },
  de: {
    title: 'Anmelden',
    what: 'Für Firmen, die Kino- und AV-Ketten betreuen. Dein Admin richtet das Konto ein.',
    show: 'Eingabe zeigen',
    organisation: 'Organisation',
    organisationHint: 'Der Kurzname deiner Firma',
    email: 'E-Mail',
    password: 'Passwort',
    submit: 'Anmelden',
    busy: 'Melde an …',
    unreachable: 'Keine Verbindung zum Server. Zum Anmelden braucht es eine.',
  },
});

/** Signing in: anybody, or the member of this device whose sign-in has run out. */
export function SignInScreen() {
  const known = session.value;
  const words = t();
  const [isShown, setShown] = useState(false);
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Problem | 'unreachable' | null>(null);
  const [second, setSecond] = useState<SecondStep | null>(null);
  const submit = async (form: FormData): Promise<void> => {
    setBusy(true);
    const of = (name: string) => String(form.get(name) ?? '').trim();
    const result = await signIn(addresses.signIn, {
      organisation: of('organisation').toLowerCase(),
      email: of('email'),
      password: String(form.get('password') ?? ''),
    });
    const step = result === null || result === 'unreachable' ? undefined : result.secondStep;
    setBusy(false);
    if (step === undefined) setRefused(result);
    else setSecond(step);
    if (result === null) goOn();
  };
  const goOn = (): void => {
    void askToKeepData();
    void sendNow();
    if (known !== null) history.back();
  };
  const content =
    second !== null ? (
      <Screen title={words.title}>
        <SecondStepForm
          step={second}
          onDone={goOn}
          onBack={(problem) => {
            setSecond(null);
            setRefused(problem);
          }}
        />
      </Screen>
    ) : (
      <Screen title={words.title}>
        <p class="narrow">{words.what}</p>
        <form
          class="stack narrow"
          onSubmit={(event) => {
            event.preventDefault();
            void submit(new FormData(event.currentTarget));
          }}
        >
          {refused === 'unreachable' && (
            <Notice tone="refusal" announce>
              {words.unreachable}
            </Notice>
          )}
          {refused !== null && refused !== 'unreachable' && <Refusal problem={refused} />}
          <Field
            label={words.organisation}
            hint={words.organisationHint}
            name="organisation"
            required
            autocomplete="organization"
            autocapitalize="none"
            spellcheck={false}
            defaultValue={known?.organisation.handle ?? ''}
          />
          <Field
            label={words.email}
            name="email"
            type="email"
            required
            autocomplete="username"
            defaultValue={known?.member.email ?? ''}
          />
          <Field
            label={words.password}
            name="password"
            type={isShown ? 'text' : 'password'}
            required
            autocomplete="current-password"
          />
          <Tick label={words.show} isOn={isShown} onChange={setShown} />
          <Button type="submit" kind="primary" large disabled={busy}>
            {busy ? words.busy : words.submit}
          </Button>
        </form>
      </Screen>
    );
  return known === null ? <main class="frame-content">{content}</main> : content;
}
