import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { LeftSafely, UnattendedWatch } from '../../../../shared/contract/triage.ts';
import { dangerNames } from '../../../../state-machines/triage/rules/unattended.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Facts } from '../../parts/card.tsx';
import { Field, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { Ticks } from '../../parts/tick.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { dayKey } from '../../words/times.ts';
import { daysLater, endOfDay } from '../../words/zone-time.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { type Logged, LogsOfDays, SettingsAgain } from './left-in-logs.tsx';
import { leftInWords } from './left-in-words.ts';
import { TicketPage } from './page.tsx';
import { PlanSentence, Question } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import type { PlanHere } from './use-plan.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** Assumed: proposed where the plan says nothing. */
const usualDays = 14;
type Levels = Record<string, string>;

/** Leaving the change that is in place in until another visit: until when, safely, and with whose yes. */
export function LeaveInScreen({ ticketId = '' }: { ticketId?: string }) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <Screen title={leftInWords().title}>
          <p>{leftInWords().lead}</p>
          {work.refusal !== null && <Refusal problem={work.refusal} />}
          <LeaveInForm work={work} />
          <QuestionPhoto work={work} />
          <LinkButton href={triageAddress(ticketId)}>{triageWords().toQuestion}</LinkButton>
        </Screen>
      )}
    </TicketPage>
  );
}

/** The way to leave a change in until another visit, where nobody can wait for the fault. */
export function LeaveIn({ work, isNext = false }: { work: Work; isNext?: boolean }) {
  return work.may('leaveInPlace') ? (
    <LinkButton
      href={triageAddress(work.ticket.id, 'leave-in')}
      {...(isNext ? { kind: 'primary' as const, large: true } : {})}
    >
      {leftInWords().leave}
    </LinkButton>
  ) : null;
}

function LeaveInForm({ work }: { work: Work }) {
  const t = leftInWords();
  const { route } = useLocation();
  const { ticket, zone } = work;
  const deviceIds = work.chain.devices.slice(0, 50).map(({ id }) => id);
  const [draft, write, forget] = useDraftForm(`leave in ${ticket.id}`, {
    until: daysLater(dayKey(new Date().toISOString(), zone), usualDays),
    owner: '',
    dangers: [] as readonly (keyof LeftSafely)[],
    name: '',
    whatChanges: '',
    howToUndo: '',
    levels: {} as Levels,
  });
  const [isLacking, setLacking] = useState(false);
  const submit = async () => {
    const until = endOfDay(draft.until, zone);
    const isWhole =
      until !== null &&
      [draft.owner, draft.name].every((text) => text.trim() !== '') &&
      [draft.whatChanges, draft.howToUndo].every(isReason);
    setLacking(!isWhole);
    if (!isWhole || until === null) return;
    const isDone = await work.send({
      type: 'leaveInPlace',
      until,
      owner: draft.owner.trim(),
      safety: Object.fromEntries(
        dangerNames.map((each) => [each, draft.dangers.includes(each)]),
      ) as LeftSafely,
      clientsYes: {
        name: draft.name.trim(),
        at: new Date().toISOString(),
        whatChanges: draft.whatChanges.trim(),
        howToUndo: draft.howToUndo.trim(),
      },
      firmware: readingsOf(deviceIds, draft.levels),
    });
    if (!isDone) return;
    await forget();
    route(triageAddress(ticket.id), true);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Field
        label={t.until}
        type="date"
        value={draft.until}
        onInput={({ currentTarget }) => write({ until: currentTarget.value })}
      />
      <Field
        label={t.owner}
        value={draft.owner}
        maxLength={longest.line}
        onInput={({ currentTarget }) => write({ owner: currentTarget.value })}
      />
      <Ticks
        label={t.safety}
        hint={t.safetyHint}
        options={dangerNames.map((value) => ({ value, label: t.dangers[value] }))}
        values={draft.dangers}
        onChange={(dangers) => write({ dangers })}
      />
      <fieldset class="stack">
        <legend>{t.yes}</legend>
        <Field
          label={t.name}
          value={draft.name}
          maxLength={longest.line}
          onInput={({ currentTarget }) => write({ name: currentTarget.value })}
        />
        <TextField
          label={t.whatChanges}
          value={draft.whatChanges}
          maxLength={longest.reason}
          onInput={({ currentTarget }) => write({ whatChanges: currentTarget.value })}
        />
        <TextField
          label={t.howToUndo}
          hint={t.howToUndoHint}
          value={draft.howToUndo}
          maxLength={longest.reason}
          onInput={({ currentTarget }) => write({ howToUndo: currentTarget.value })}
        />
      </fieldset>
      <FirmwareFields
        work={work}
        deviceIds={deviceIds}
        levels={draft.levels}
        onChange={(levels) => write({ levels })}
      />
      {isLacking && (
        <Notice tone="refusal" announce>
          {t.missing}
        </Notice>
      )}
      <Button type="submit" kind="primary" large>
        {t.send}
      </Button>
    </form>
  );
}

const readingsOf = (deviceIds: readonly string[], levels: Levels) =>
  deviceIds.map((deviceId) => {
    const level = (levels[deviceId] ?? '').trim();
    return { deviceId, level: level === '' ? null : level };
  });

/** The firmware of devices as they show it now, one tap where it is what was known. */
function FirmwareFields({
  work,
  deviceIds,
  known = {},
  levels,
  onChange,
}: {
  work: Work;
  deviceIds: readonly string[];
  /** What was read before, where it is other than the chain says. */
  known?: Levels;
  levels: Levels;
  onChange: (levels: Levels) => void;
}) {
  const t = leftInWords();
  return (
    <fieldset class="stack">
      <legend>{t.firmware}</legend>
      <p class="soft">{t.firmwareHint}</p>
      {deviceIds.map((deviceId) => {
        const device = work.chain.devices.find(({ id }) => id === deviceId);
        const before = known[deviceId] ?? device?.firmware ?? null;
        const set = (level: string) => onChange({ ...levels, [deviceId]: level });
        return (
          <div key={deviceId} class="row">
            <Field
              label={device?.name ?? ''}
              value={levels[deviceId] ?? ''}
              autocomplete="off"
              autocapitalize="none"
              maxLength={longest.line}
              onInput={({ currentTarget }) => set(currentTarget.value)}
            />
            {before !== null && <Button onClick={() => set(before)}>{t.still(before)}</Button>}
          </div>
        );
      })}
    </fieldset>
  );
}

/** A change was left in: until when, with whose yes, and what ends it. */
export function LeftInQuestion({
  work,
  planned,
  running,
}: {
  work: Work;
  planned: PlanHere;
  running: UnattendedWatch;
}) {
  const t = leftInWords();
  const deviceIds = running.firmwareBefore.map(({ deviceId }) => deviceId);
  const known = Object.fromEntries(
    running.firmwareBefore.flatMap(({ deviceId, level }) => (level === null ? [] : [[deviceId, level]])),
  );
  const [{ levels, logged }, write, forget] = useDraftForm(`left in ${running.id}`, {
    levels: {} as Levels,
    logged: [] as readonly Logged[],
  });
  const end = async () => {
    const firmware = readingsOf(deviceIds, levels);
    if (await work.send({ type: 'endUnattended', firmware, logged: [...logged] })) await forget();
  };
  return (
    <Question
      work={work}
      title={t.leftTitle}
      answers={
        <Button kind="primary" large onClick={() => void end()}>
          {t.end}
        </Button>
      }
    >
      <PlanSentence plan={planned.plan} />
      <Facts
        facts={[
          [t.said, typed(running.clientsYes.name)],
          [t.whatChanges, typed(running.clientsYes.whatChanges)],
          [t.undo, typed(running.clientsYes.howToUndo)],
        ]}
      />
      <p>{t.endLead}</p>
      <FirmwareFields
        work={work}
        deviceIds={deviceIds}
        known={known}
        levels={levels}
        onChange={(changed) => write({ levels: changed })}
      />
      <SettingsAgain work={work} running={running} />
      <LogsOfDays
        work={work}
        running={running}
        logged={logged}
        onChange={(changed) => write({ logged: changed })}
      />
    </Question>
  );
}
