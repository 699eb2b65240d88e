import { useState } from 'preact/hooks';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { NewApp, RecoveryCodes, SecondFactors } from '../../../shared/contract/people.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { dayAndTime } from '../words/times.ts';
import './second-factor.css';
import { QrCode } from './qr-code.tsx';
import { secondFactorWords } from './second-factor-words.ts';

/** What is being done: an app taken in, or something that needs the password once more. */
type Step =
  | { readonly kind: 'newApp'; readonly app: NewApp }
  | { readonly kind: 'newCodes' | 'turnOff' }
  | { readonly kind: 'codes'; readonly codes: readonly string[] };

/** An authenticator app beside the password: turned on, its codes for recovery, turned off. */
export function SecondFactor() {
  const t = secondFactorWords();
  const document = useDocument(paths.ownSecondFactors);
  const [step, setStep] = useState<Step | null>(null);
  const sending = useSending();
  const begin = async (): Promise<void> => {
    const done = await sending.send<NewApp>('POST', addresses.newApp);
    if (done !== null) setStep({ kind: 'newApp', app: done.body });
  };
  const finish = async (codes: readonly string[] | null): Promise<void> => {
    setStep(codes === null ? null : { kind: 'codes', codes });
    await refresh(paths.ownSecondFactors);
  };
  return (
    <Card title={t.title}>
      {step === null && (
        <DocumentView document={document}>
          {(factors) => (
            <>
              <Status factors={factors} />
              <SendingResult sending={sending} />
              <div class="row">
                {factors.app === null ? (
                  <Button disabled={sending.isBusy} onClick={() => void begin()}>
                    {t.turnOn}
                  </Button>
                ) : (
                  <>
                    <Button onClick={() => setStep({ kind: 'newCodes' })}>{t.newCodes}</Button>
                    {!factors.isRequired && (
                      <Button onClick={() => setStep({ kind: 'turnOff' })}>{t.turnOff}</Button>
                    )}
                  </>
                )}
              </div>
            </>
          )}
        </DocumentView>
      )}
      {step?.kind === 'newApp' && (
        <>
          <AppKey app={step.app} />
          <WithPassword
            label={t.confirm}
            address={addresses.confirmApp}
            proposal={step.app.proposal}
            onDone={(body) => void finish('recoveryCodes' in body ? body.recoveryCodes : null)}
            onCancel={() => setStep(null)}
          />
        </>
      )}
      {(step?.kind === 'newCodes' || step?.kind === 'turnOff') && (
        <WithPassword
          label={t[step.kind]}
          address={step.kind === 'newCodes' ? addresses.newRecoveryCodes : addresses.endOwnApp}
          onDone={(body) => void finish('recoveryCodes' in body ? body.recoveryCodes : null)}
          onCancel={() => setStep(null)}
        />
      )}
      {step?.kind === 'codes' && <Codes codes={step.codes} onDone={() => setStep(null)} />}
    </Card>
  );
}

function Status({ factors: { app, recoveryCodesLeft, isRequired } }: { factors: SecondFactors }) {
  const t = secondFactorWords();
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (app === null) return isRequired ? <Notice tone="caution">{t.required}</Notice> : <p>{t.off}</p>;
  return (
    <p>
      {t.on(dayAndTime(app.addedAt, zone), dayAndTime(app.usedAt, zone))}
      <br />
      {t.codesLeft(recoveryCodesLeft)}
    </p>
  );
}

/** The key as the app's camera reads it, and as a person types it. */
function AppKey({ app }: { app: NewApp }) {
  const t = secondFactorWords();
  return (
    <>
      <p>{t.scan}</p>
      <QrCode text={app.uri} label={t.qrCode} />
      <p>
        {t.orType} <code class="secret">{app.key.match(/.{1,4}/g)?.join(' ')}</code>
      </p>
      <p>
        <a href={app.uri}>{t.openHere}</a>
      </p>
    </>
  );
}

/** What changes how somebody signs in needs their password once more; with a proposal, also a first code of the app. */
function WithPassword({
  label,
  address,
  proposal,
  onDone,
  onCancel,
}: {
  label: string;
  address: string;
  proposal?: string;
  onDone: (body: RecoveryCodes | SecondFactors) => void;
  onCancel: () => void;
}) {
  const t = secondFactorWords();
  const [typed, setTyped] = useState({ code: '', password: '' });
  const sending = useSending();
  const send = async (): Promise<void> => {
    const body = proposal === undefined ? { password: typed.password } : { ...typed, proposal };
    const done = await sending.send<RecoveryCodes | SecondFactors>('POST', address, { body });
    if (done !== null) onDone(done.body);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {proposal !== undefined && (
        <Field
          label={t.code}
          hint={t.codeHint}
          required
          autocomplete="one-time-code"
          inputMode="numeric"
          value={typed.code}
          onInput={({ currentTarget }) => setTyped({ ...typed, code: currentTarget.value })}
        />
      )}
      <Field
        label={t.password}
        type="password"
        required
        autocomplete="current-password"
        value={typed.password}
        onInput={({ currentTarget }) => setTyped({ ...typed, password: currentTarget.value })}
      />
      <SendingResult sending={sending} />
      <div class="row">
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {label}
        </Button>
        <Button onClick={onCancel}>{t.cancel}</Button>
      </div>
    </form>
  );
}

/** Codes for recovery, which are shown this once. */
function Codes({ codes, onDone }: { codes: readonly string[]; onDone: () => void }) {
  const t = secondFactorWords();
  return (
    <>
      <Notice tone="good" announce>
        {t.keepCodes}
      </Notice>
      <ul class="secret-list">
        {codes.map((code) => (
          <li key={code}>
            <code class="secret">{code}</code>
          </li>
        ))}
      </ul>
      <div>
        <Button kind="primary" onClick={onDone}>
          {t.haveThem}
        </Button>
      </div>
    </>
  );
}
