import { useState } from 'preact/hooks';
import type { Device, Settings } from '../../../shared/contract/chain.ts';
import { settingsPhases } from '../../../shared/contract/evidence-names.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { Button } from '../parts/button.tsx';
import { Choices, Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { putReading } from '../store/outbox.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import type { OnTicket } from './common/keep-files.ts';
import { knownSettings, settingFrom } from './common/last-known.ts';
import { readingWords } from './reading-words.ts';

type Phase = 'before' | 'after' | 'apart';
type Properties = { ticket: Ticket; onTicket: OnTicket; chain: ChainDocument; device: Device };
type Draft = { values: Record<string, string>; added: string[]; newKey: string; phase: Phase | null };
const empty: Draft = { values: {}, added: [], newKey: '', phase: null };

/**
 * Settings as the device's own menu shows them now, row by row beside the last known value. Only rows that were
 * filled in count as read. While a change is open, the reading says whether it is from before or after it.
 */
export function SettingsEntry({ ticket, onTicket, chain, device }: Properties) {
  const t = readingWords();
  const zone = useZone(ticket.siteId);
  const [draft, change, forget] = useDraftForm(`settings ${ticket.id} ${device.id}`, empty);
  const [kept, setKept] = useState<number | null>(null);
  const known = knownSettings(ticket, chain, device.id);
  const keys = [...new Set([...known.keys(), ...draft.added])];
  const open = openChange(ticket.triage);
  const phase: Phase =
    open === null ? 'apart' : (draft.phase ?? (open.status === 'declared' ? 'before' : 'after'));
  const filled = keys.filter((key) => (draft.values[key] ?? '').trim() !== '');
  const missing = keys.filter((key) => known.has(key) && !filled.includes(key));
  const fill = (key: string, value: string) => {
    setKept(null);
    change({ values: { ...draft.values, [key]: value } });
  };
  const addKey = () => {
    const key = draft.newKey.trim();
    const isNew = key !== '' && !keys.includes(key);
    change({ newKey: '', ...(isNew ? { added: [...draft.added, key] } : {}) });
  };
  const keep = async () => {
    if (filled.length === 0) return;
    const values: Settings = Object.fromEntries(
      filled.map((key) => [key, settingFrom(draft.values[key] ?? '', known.get(key)?.value)]),
    );
    const changeId = phase === 'apart' ? null : (open?.id ?? null);
    await putReading(onTicket, { kind: 'settings', values, phase }, { deviceId: device.id, changeId });
    await forget();
    setKept(filled.length);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <p class="soft">{t.settingsLead}</p>
      {open !== null && (
        <Choices
          label={t.phase}
          value={phase}
          onChoose={(chosen) => change({ phase: chosen })}
          options={settingsPhases.map((value) => ({
            value,
            label: t.phases[value],
          }))}
        />
      )}
      {keys.length === 0 && <p>{t.noSettings}</p>}
      {keys.map((key) => {
        const last = known.get(key);
        const origin = last?.readAt ? t.readAt(dayAndTime(last.readAt, zone)) : t.described;
        return (
          <div key={key} class="setting">
            <Field
              label={key}
              hint={last === undefined ? t.notKnownYet : `${t.lastKnown}: ${String(last.value)} (${origin})`}
              value={draft.values[key] ?? ''}
              autocomplete="off"
              maxLength={longest.settingValue}
              onInput={({ currentTarget }) => fill(key, currentTarget.value)}
            />
            {last !== undefined && (
              <Button onClick={() => fill(key, String(last.value))} aria-label={t.asBefore(key)}>
                =
              </Button>
            )}
          </div>
        );
      })}
      <div class="setting">
        <Field
          label={t.another}
          hint={t.anotherHint}
          value={draft.newKey}
          autocomplete="off"
          maxLength={longest.settingKey}
          onInput={({ currentTarget }) => change({ newKey: currentTarget.value })}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            addKey();
          }}
        />
        <Button onClick={addKey} aria-label={t.addAnother}>
          +
        </Button>
      </div>
      {phase !== 'apart' && filled.length > 0 && missing.length > 0 && (
        <Notice tone="caution">{t.notAll(missing.join(', '))}</Notice>
      )}
      <div class="row">
        <Button type="submit" kind="primary" disabled={filled.length === 0}>
          {t.keepSettings(filled.length)}
        </Button>
        <span role="status">{kept === null ? '' : t.kept}</span>
      </div>
    </form>
  );
}
