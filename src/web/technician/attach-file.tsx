import { useState } from 'preact/hooks';
import type { Device } from '../../../shared/contract/chain.ts';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { Field, SelectField } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { useDraftForm } from '../store/use-draft.ts';
import { useZone } from '../words/zone.ts';
import { attachWords } from './attach-words.ts';
import { aboutOf, keepFile, type OnTicket } from './common/keep-files.ts';

const dayOrders = ['told', 'dayFirst', 'monthFirst'] as const;
type DayOrder = (typeof dayOrders)[number];
const orderIn = (dayOrder: DayOrder) => (dayOrder === 'told' ? {} : { dayOrder });

type Kind = Exclude<FileEvidenceAbout['kind'], 'photo'>;
/** What is told of a file before it is chosen. Kind, device and socket stand for the next one, too. */
type Draft = {
  kind: Kind;
  deviceId: string;
  portId: string;
  dayOrder: DayOrder;
  logTime: string;
  trueTime: string;
  description: string;
};
const nothingTyped = { logTime: '', trueTime: '', description: '' };
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
  const first = kinds[0] ?? 'document';
  const [draft, write] = useDraftForm<Draft>(`attach ${ticket.id} ${device?.id ?? ''} ${first}`, {
    kind: first,
    deviceId: device?.id ?? '',
    portId: '',
    dayOrder: 'told',
    ...nothingTyped,
  });
  const { kind, deviceId, portId, logTime, trueTime, dayOrder, description } = draft;
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
      write(nothingTyped);
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
        onChoose={(chosen) => write({ kind: chosen })}
        options={kinds.map((value) => ({ value, label: t.kinds[value] }))}
      />
      {device === null && (
        <SelectField
          label={t.device}
          value={deviceId}
          onChoose={(id) => write({ deviceId: id, portId: '' })}
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
          onChoose={(id) => write({ portId: id })}
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
            onInput={({ currentTarget }) => write({ logTime: currentTarget.value })}
          />
          <Field
            label={t.trueTime}
            optional
            hint={t.zoneHint(siteZone)}
            type="datetime-local"
            step="1"
            value={trueTime}
            {...(isHalf ? { error: t.bothNeeded } : {})}
            onInput={({ currentTarget }) => write({ trueTime: currentTarget.value })}
          />
          <SelectField
            label={t.dayOrder}
            value={dayOrder}
            onChoose={(order) => write({ dayOrder: order })}
            options={dayOrders.map((value) => ({ value, label: t.dayOrders[value] }))}
          />
        </>
      )}
      <Field
        label={t.description}
        optional
        value={description}
        maxLength={longest.text}
        onInput={({ currentTarget }) => write({ description: currentTarget.value })}
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
