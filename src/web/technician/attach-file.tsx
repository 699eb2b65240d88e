import { useState } from 'preact/hooks';
import type { Device } from '../../../shared/contract/chain.ts';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { useZone } from '../words/zone.ts';
import { attachWords } from './attach-words.ts';
import { aboutOf, keepFile, type OnTicket } from './common/keep-files.ts';

const dayOrders = ['told', 'dayFirst', 'monthFirst'] as const;
type DayOrder = (typeof dayOrders)[number];
const orderIn = (dayOrder: DayOrder) => (dayOrder === 'told' ? {} : { dayOrder });

type Kind = Exclude<FileEvidenceAbout['kind'], 'photo'>;
type Properties = {
  ticket: Ticket;
  onTicket: OnTicket;
  chain: ChainDocument;
  /** Null: to be chosen, or none. */
  device: Device | null;
  kinds: readonly Kind[];
};

/** A file for the evidence store, with what has to be known of it: its device, its socket, and what its clock said when. */
export function AttachFile({ ticket, onTicket, chain, device, kinds }: Properties) {
  const t = attachWords();
  const siteZone = useZone(ticket.siteId);
  const [kind, setKind] = useState<Kind>(kinds[0] ?? 'document');
  const [deviceId, setDeviceId] = useState(device?.id ?? '');
  const [portId, setPortId] = useState('');
  const [logTime, setLogTime] = useState('');
  const [trueTime, setTrueTime] = useState('');
  const [dayOrder, setDayOrder] = useState<DayOrder>('told');
  const [description, setDescription] = useState('');
  const [kept, setKept] = useState<number | null>(null);
  const [hasFailed, setFailed] = useState(false);
  const ports = chain.chain.devices.find(({ id }) => id === deviceId)?.ports ?? [];
  const isHalf = (logTime.trim() === '') !== (trueTime === '');
  const take = async (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])];
    input.value = '';
    const base = aboutOf(kind, {
      deviceId: deviceId === '' ? null : deviceId,
      portId: kind === 'edid' && portId !== '' ? portId : null,
      changeId: openChange(ticket.triage)?.id ?? null,
    });
    const clock =
      kind === 'log' ? { ...(await clockOf(logTime.trim(), trueTime, siteZone)), ...orderIn(dayOrder) } : {};
    try {
      for (const file of files)
        await keepFile(onTicket, file, { ...base, description: description.trim(), clock });
      setKept(files.length);
      setFailed(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <div class="stack">
      <SelectField
        label={t.kind}
        value={kind}
        onChoose={setKind}
        options={kinds.map((value) => ({ value, label: t.kinds[value] }))}
      />
      {device === null && (
        <SelectField
          label={t.device}
          value={deviceId}
          onChoose={(id) => {
            setDeviceId(id);
            setPortId('');
          }}
          options={[
            { value: '', label: t.noDevice },
            ...chain.chain.devices.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
      )}
      {kind === 'edid' && deviceId !== '' && (
        <SelectField
          label={t.port}
          value={portId}
          onChoose={setPortId}
          options={[{ value: '', label: t.noPort }, ...ports.map(({ id, label }) => ({ value: id, label }))]}
        />
      )}
      {kind === 'log' && (
        <>
          <p class="soft">{t.clockLead}</p>
          <Field
            label={t.logTime}
            optional
            hint={t.logTimeHint}
            value={logTime}
            maxLength={longest.logTime}
            autocomplete="off"
            onInput={({ currentTarget }) => setLogTime(currentTarget.value)}
          />
          <Field
            label={t.trueTime}
            optional
            hint={t.zoneHint(siteZone)}
            type="datetime-local"
            step="1"
            value={trueTime}
            {...(isHalf ? { error: t.bothNeeded } : {})}
            onInput={({ currentTarget }) => setTrueTime(currentTarget.value)}
          />
          <SelectField
            label={t.dayOrder}
            value={dayOrder}
            onChoose={setDayOrder}
            options={dayOrders.map((value) => ({ value, label: t.dayOrders[value] }))}
          />
        </>
      )}
      <Field
        label={t.description}
        optional
        value={description}
        maxLength={longest.text}
        onInput={({ currentTarget }) => setDescription(currentTarget.value)}
      />
      <div class="row">
        <label class="button button-primary capture-button">
          <input
            class="for-readers-only"
            type="file"
            multiple
            onChange={({ currentTarget }) => void take(currentTarget)}
          />
          {t.choose[kind]}
        </label>
        <span role="status">{kept === null ? '' : t.kept(kept)}</span>
      </div>
      {hasFailed && (
        <Notice tone="refusal" announce>
          {t.notKept}
        </Notice>
      )}
    </div>
  );
}

/** What is known of a log's clock; the true time is one of the site's zone, as its field has it. */
async function clockOf(logTime: string, trueTime: string, zone: string): Promise<FileEvidenceAbout['clock']> {
  if (logTime === '' || trueTime === '') return { zone };
  const { DateTime } = await import('luxon');
  const moment = DateTime.fromISO(trueTime, { zone }).toUTC().toISO();
  return moment === null ? { zone } : { zone, knownMoments: [{ logTime, trueTime: moment }] };
}
