import { useState } from 'preact/hooks';
import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Device } from '../../../../shared/contract/chain.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Look } from '../../../../shared/contract/look.ts';
import { describeKept } from '../../../../state-machines/triage/describe-look.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field, SelectField } from '../../parts/field.tsx';
import { Badge, Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { Sentence } from '../../words/sentence.tsx';
import { dayAndTime } from '../../words/times.ts';
import { settingFrom } from '../common/last-known.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { lookWords } from './look-words.ts';
import { TicketPage } from './page.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { useReading } from './reading.tsx';
import { ReasonDialog } from './reason.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What was looked at in this round, newest first, to put right what is wrong in it and to look at more. */
export function LooksScreen({ ticketId = '' }: { ticketId?: string }) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <>
          <Looks work={work} />
          <QuestionPhoto work={work} />
        </>
      )}
    </TicketPage>
  );
}

function Looks({ work }: { work: Work }) {
  const t = lookWords();
  const [withdrawing, setWithdrawing] = useState<Look | null>(null);
  const { round, looks } = work.ticket.triage;
  const ofRound = looks.filter((look) => look.round === round);
  return (
    <Screen title={t.allTitle}>
      <p>{t.allLead}</p>
      {work.refusal !== null && withdrawing === null && <Refusal problem={work.refusal} />}
      {ofRound.length === 0 && <p class="soft">{t.noneYet}</p>}
      {ofRound.toReversed().map((look) => (
        <LookCard key={look.id} work={work} look={look} onWithdraw={() => setWithdrawing(look)} />
      ))}
      {work.may('recordLook') && <LookAtMore key={`more ${looks.length}`} work={work} />}
      <div>
        <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
      </div>
      {withdrawing !== null && (
        <ReasonDialog
          about={`withdraw ${withdrawing.id}`}
          title={t.withdrawTitle}
          lead={t.withdrawLead}
          suggestion={t.withdrawReason}
          action={t.letNotCount}
          refusal={work.refusal}
          onDone={() => setWithdrawing(null)}
          onReason={(reason) => work.send({ type: 'withdrawLook', lookId: withdrawing.id, reason })}
        />
      )}
    </Screen>
  );
}

function LookCard({ work, look, onWithdraw }: { work: Work; look: Look; onWithdraw: () => void }) {
  const t = lookWords();
  const said = <Sentence>{describeKept(look, (place) => namedPlace(work.chain, place))}</Sentence>;
  return (
    <section class="card">
      <p class="soft">{dayAndTime(look.at, work.zone)}</p>
      {look.withdrawn === null ? (
        <>
          <p>{said}</p>
          {work.may('withdrawLook') && (
            <div>
              <Button onClick={onWithdraw}>{t.letNotCount}</Button>
            </div>
          )}
        </>
      ) : (
        <p>
          <s>{said}</s> <Badge>{t.withdrawn}</Badge> {typed(look.withdrawn.reason)}
        </p>
      )}
    </section>
  );
}

/** Anything else worth reading, of any device and at a good moment too. */
function LookAtMore({ work }: { work: Work }) {
  const t = lookWords();
  const [{ deviceId, kind }, write] = useDraftForm(`look at more ${work.ticket.id}`, {
    deviceId: '',
    kind: 'page' as 'page' | 'setting',
  });
  const device = work.chain.devices.find(({ id }) => id === deviceId);
  return (
    <section class="card stack">
      <h2>{t.lookMore}</h2>
      <SelectField
        label={t.whichDevice}
        value={deviceId}
        onChoose={(id) => write({ deviceId: id })}
        options={[
          { value: '', label: t.chooseDevice },
          ...work.chain.devices.map(({ id, name }) => ({ value: id, label: name })),
        ]}
      />
      {device !== undefined && (
        <>
          <SelectField
            label={t.whatToLookAt}
            value={kind}
            onChoose={(chosen) => write({ kind: chosen })}
            options={[
              { value: 'page', label: t.page },
              { value: 'setting', label: t.setting },
            ]}
          />
          {kind === 'page' ? (
            <PageForm key={device.id} work={work} deviceId={device.id} />
          ) : (
            <SettingForm key={device.id} work={work} device={device} />
          )}
        </>
      )}
    </section>
  );
}

function PageForm({ work, deviceId }: { work: Work; deviceId: string }) {
  const { fields, buttons } = useReading(work, { deviceId, moment: 'good' });
  return (
    <>
      {fields}
      {buttons}
    </>
  );
}

function SettingForm({ work, device }: { work: Work; device: Device }) {
  const t = lookWords();
  const [{ key, value, shouldBe }, write, forget] = useDraftForm(
    `setting looked at ${work.ticket.id} ${device.id}`,
    { key: '', value: '', shouldBe: '' },
  );
  const [isHalf, setHalf] = useState(false);
  const name = key.trim();
  const known = device.settings[name];
  const keep = async () => {
    setHalf(name === '' || value.trim() === '');
    if (name === '' || value.trim() === '') return;
    const what = {
      kind: 'setting' as const,
      deviceId: device.id,
      key: name,
      value: settingFrom(value, known),
      shouldBe: shouldBe.trim() === '' ? null : settingFrom(shouldBe, known),
    };
    if (await work.send({ type: 'recordLook', what, evidenceId: null })) await forget();
  };
  return (
    <>
      <Field
        label={t.settingName}
        value={key}
        list="settings-known"
        autocomplete="off"
        maxLength={longest.settingKey}
        onInput={({ currentTarget }) => write({ key: currentTarget.value })}
      />
      <datalist id="settings-known">
        {Object.keys(device.settings).map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <Field
        label={t.settingValue}
        value={value}
        autocomplete="off"
        maxLength={longest.settingValue}
        onInput={({ currentTarget }) => write({ value: currentTarget.value })}
      />
      <Field
        label={t.shouldBe}
        hint={t.shouldBeHint}
        optional
        value={shouldBe}
        autocomplete="off"
        maxLength={longest.settingValue}
        onInput={({ currentTarget }) => write({ shouldBe: currentTarget.value })}
      />
      {isHalf && <Notice tone="refusal">{t.fillIn}</Notice>}
      <Button kind="primary" large onClick={() => void keep()}>
        {t.keepSetting}
      </Button>
    </>
  );
}
