import { useState } from 'preact/hooks';
import { findDevice } from '../../../../shared/chain/look-up.ts';
import type { UnattendedWatch } from '../../../../shared/contract/triage.ts';
import { standingEvidence } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field, SelectField } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { dayAndTime } from '../../words/times.ts';
import { momentOf } from '../../words/zone-time.ts';
import { evidenceAddress, placeAddress } from '../common/addresses.ts';
import { leftInWords } from './left-in-words.ts';
import type { Work } from './work.ts';

/** A moment of the days at which a device's own log shows the fault. */
export type Logged = UnattendedWatch['logged'][number];

/** Devices whose settings were read before the change, and not since the days began: what updated itself shows there. */
export function SettingsAgain({ work, running }: { work: Work; running: UnattendedWatch }) {
  const t = leftInWords();
  const { ticket, chain } = work;
  const read = standingEvidence(ticket.triage).flatMap(({ at, tie, reading }) =>
    reading?.kind === 'settings' && tie.changeId === running.changeId && tie.deviceId !== null
      ? [{ deviceId: tie.deviceId, phase: reading.phase, isSince: at > running.startedAt }]
      : [],
  );
  const before = new Set(read.filter(({ phase }) => phase === 'before').map(({ deviceId }) => deviceId));
  const again = new Set(
    read.filter(({ phase, isSince }) => phase === 'after' && isSince).map(({ deviceId }) => deviceId),
  );
  const due = [...before].filter((deviceId) => !again.has(deviceId));
  if (due.length === 0) return null;
  return (
    <section class="stack">
      <h2>{t.settings}</h2>
      <p class="soft">{t.settingsHint}</p>
      {due.map((deviceId) => (
        <LinkButton key={deviceId} href={placeAddress(ticket.id, { kind: 'device', deviceId }, 'settings')}>
          {t.settingsOf(findDevice(chain, deviceId)?.name ?? '')}
        </LinkButton>
      ))}
    </section>
  );
}

/** The devices' own logs of the days: handed in, and what they show of the fault. */
export function LogsOfDays({
  work,
  running,
  logged,
  onChange,
}: {
  work: Work;
  running: UnattendedWatch;
  logged: readonly Logged[];
  onChange: (logged: readonly Logged[]) => void;
}) {
  const t = leftInWords();
  const { ticket, chain, zone } = work;
  const logs = standingEvidence(ticket.triage).filter(
    ({ id, kind, at }) => kind === 'log' && at > running.startedAt && !work.isOnItsWay(id),
  );
  const nameOf = (evidenceId: string): string => {
    const deviceId = logs.find(({ id }) => id === evidenceId)?.tie.deviceId ?? null;
    return (deviceId === null ? undefined : findDevice(chain, deviceId)?.name) ?? t.aLog;
  };
  const options = logs.map(({ id, at }) => ({ value: id, label: `${nameOf(id)}, ${dayAndTime(at, zone)}` }));
  return (
    <section class="stack">
      <h2>{t.logs}</h2>
      <p>{t.logsLead}</p>
      <p class="soft">{t.logsHere(logs.length)}</p>
      <LinkButton href={evidenceAddress(ticket.id, 'log')}>{t.handIn}</LinkButton>
      {logged.length > 0 && (
        <ul class="list">
          {logged.map((each) => (
            <li key={each.occurredAt + each.evidenceId} class="row">
              <span>
                {dayAndTime(each.occurredAt, zone)}, {nameOf(each.evidenceId)}
              </span>
              <Button kind="quiet" onClick={() => onChange(logged.filter((one) => one !== each))}>
                {t.notThis}
                <span class="for-readers-only"> {dayAndTime(each.occurredAt, zone)}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      {logs.length > 0 && (
        <MomentForm
          name={`logged ${running.id}`}
          zone={zone}
          options={options}
          span={{ from: running.startedAt, to: new Date().toISOString() }}
          onMoment={(one) => onChange([...logged, one])}
        />
      )}
    </section>
  );
}

/** A moment at which a log shows the fault, by the site's clock. */
function MomentForm({
  name,
  zone,
  options,
  span,
  onMoment,
}: {
  /** What is typed is kept under it. */
  name: string;
  zone: string;
  options: readonly { value: string; label: string }[];
  span: { from: string; to: string };
  onMoment: (one: Logged) => void;
}) {
  const t = leftInWords();
  const [{ time, chosen }, write] = useDraftForm(name, { time: '', chosen: null as string | null });
  const [isWrong, setWrong] = useState(false);
  const evidenceId = chosen ?? options[0]?.value ?? '';
  const note = () => {
    const moment = momentOf(time, zone);
    const at = moment === null ? Number.NaN : Date.parse(moment);
    const isOfDays = at >= Date.parse(span.from) && at <= Date.parse(span.to);
    setWrong(!isOfDays);
    if (!isOfDays) return;
    onMoment({ occurredAt: new Date(at).toISOString(), evidenceId });
    write({ time: '' });
  };
  return (
    <div class="stack">
      {options.length > 1 && (
        <SelectField
          label={t.whichLog}
          value={evidenceId}
          options={options}
          onChoose={(id) => write({ chosen: id })}
        />
      )}
      <Field
        label={t.shownAt}
        hint={t.shownHint(zone)}
        type="datetime-local"
        step="1"
        value={time}
        error={isWrong ? t.notOfDays : undefined}
        onInput={({ currentTarget }) => write({ time: currentTarget.value })}
      />
      <Button onClick={note}>{t.note}</Button>
    </div>
  );
}
