import { findDevice } from '../../../../shared/chain/look-up.ts';
import type { Chain, Settings } from '../../../../shared/contract/chain.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { ChangeRecord, TriageRecord } from '../../../../shared/contract/triage.ts';
import { standingEvidence } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { Field } from '../../parts/field.tsx';
import { putReading } from '../../store/outbox.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { placeWords } from '../common/place-words.ts';
import { Question } from './question.tsx';
import { stepWords } from './step-words.ts';
import type { Work } from './work.ts';

type Phase = 'before' | 'after';
type Reading = { values: Settings; at: string };

/** A device's settings as they were read last, on this ticket or when the chain was described. */
export function lastSettings(record: TriageRecord, chain: Chain, deviceId: string): Settings {
  const read = standingEvidence(record).flatMap(({ tie, reading, at }): Reading[] =>
    tie.deviceId === deviceId && reading?.kind === 'settings' ? [{ values: reading.values, at }] : [],
  );
  const newest = read.toSorted((a, b) => a.at.localeCompare(b.at)).at(-1)?.values;
  return { ...findDevice(chain, deviceId)?.settings, ...newest };
}

/** The first device whose settings a change declares and that was not read out in that phase yet. */
export function deviceToRead(record: TriageRecord, change: ChangeRecord, phase: Phase): string | null {
  const devices = [...new Set(change.settings.map(({ deviceId }) => deviceId))];
  const wasRead = (deviceId: string, when: Phase): boolean =>
    standingEvidence(record).some(
      ({ tie, reading }) =>
        tie.changeId === change.id &&
        tie.deviceId === deviceId &&
        reading?.kind === 'settings' &&
        reading.phase === when,
    );
  // What was not read before can't be compared after.
  const due = phase === 'before' ? devices : devices.filter((deviceId) => wasRead(deviceId, 'before'));
  return due.find((deviceId) => !wasRead(deviceId, phase)) ?? null;
}

/** Settings before or after a change: their difference must show what was declared, and nothing else. */
export function SettingsQuestion({
  work,
  change,
  deviceId,
  phase,
  onSkip,
}: {
  work: Work;
  change: ChangeRecord;
  deviceId: string;
  phase: Phase;
  onSkip: () => void;
}) {
  const t = stepWords();
  const last = lastSettings(work.ticket.triage, work.chain, deviceId);
  const declared = Object.fromEntries(
    change.settings.filter((each) => each.deviceId === deviceId).map(({ key, to }) => [key, to]),
  );
  const shown: Settings = phase === 'before' ? last : { ...last, ...declared };
  for (const key of Object.keys(declared)) shown[key] ??= '';
  const [written, write, forget] = useDraftForm<Record<string, string>>(
    `settings ${phase} ${change.id} ${deviceId}`,
    {},
  );
  const record = async () => {
    const values = Object.fromEntries(
      Object.entries(shown).flatMap(([key, value]) => {
        const text = written[key];
        const read = text === undefined || text === String(value) ? value : text.trim();
        return read === '' ? [] : [[key, read]];
      }),
    );
    await putReading(work.ticket, { kind: 'settings', values, phase }, { deviceId, changeId: change.id });
    await forget();
  };
  return (
    <Question
      work={work}
      title={phase === 'before' ? t.beforeTitle : t.afterTitle}
      answers={
        <>
          <Button kind="primary" large onClick={() => void record()}>
            {t.asShown}
          </Button>
          <Button onClick={onSkip}>{t.withoutReading}</Button>
        </>
      }
    >
      <p>{phase === 'before' ? t.beforeLead : t.afterLead}</p>
      <h2>{t.settingsOf(placeWords(work.chain, { kind: 'device', deviceId }))}</h2>
      {Object.entries(shown).map(([key, value]) => (
        <Field
          key={key}
          label={key}
          value={written[key] ?? String(value)}
          maxLength={longest.settingValue}
          onInput={({ currentTarget }) => write({ [key]: currentTarget.value })}
        />
      ))}
    </Question>
  );
}
