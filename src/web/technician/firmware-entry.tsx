import { useState } from 'preact/hooks';
import { checkLevels } from '../../../shared/chain/firmware-level.ts';
import type { Device } from '../../../shared/contract/chain.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Facts } from '../parts/card.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import { putReading } from '../store/outbox.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import type { OnTicket } from './common/keep-files.ts';
import { type Known, knownFirmware } from './common/last-known.ts';
import { readingWords } from './reading-words.ts';

type Properties = { ticket: Ticket; onTicket: OnTicket; chain: ChainDocument; device: Device };

/** The firmware that the device shows, beside what was known of it and the lowest level for its model. */
export function FirmwareEntry({ ticket, onTicket, chain, device }: Properties) {
  const t = readingWords();
  const zone = useZone(ticket.siteId);
  const levels = useDocument(paths.firmwareLevels).body?.items ?? [];
  const [{ level }, change, forget] = useDraftForm(`firmware ${ticket.id} ${device.id}`, { level: '' });
  const [isKept, setKept] = useState(false);
  const known = knownFirmware(ticket, chain, device.id);
  const typed = level.trim();
  const shown = typed === '' ? (known[0]?.value ?? null) : typed;
  const checks = checkLevels({ model: device.model, firmware: shown }, levels);
  const origin = ({ readAt }: Known<string>) =>
    readAt === null ? t.described : t.readAt(dayAndTime(readAt, zone));
  const keep = async () => {
    if (typed === '') return;
    const changeId = openChange(ticket.triage)?.id ?? null;
    await putReading(onTicket, { kind: 'firmware', level: typed }, { deviceId: device.id, changeId });
    await forget();
    setKept(true);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <Facts
        facts={[
          ...(known.length === 0 ? [[t.lastKnown, t.nothingKnown] as const] : []),
          ...known
            .slice(0, 3)
            .map((one, at) => [at === 0 ? t.lastKnown : t.before, `${one.value} (${origin(one)})`] as const),
          ...checks.map(({ minimum }) => [t.minimum, minimum] as const),
        ]}
      />
      <Field
        label={t.firmwareNow}
        value={level}
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        maxLength={longest.line}
        onInput={({ currentTarget }) => {
          setKept(false);
          change({ level: currentTarget.value });
        }}
      />
      {checks.map(({ result, minimum }) =>
        result === 'below' ? (
          <Notice key={minimum} tone="caution">
            {t.below(shown ?? '', minimum)}
          </Notice>
        ) : null,
      )}
      <div class="row">
        {known[0] !== undefined && typed === '' && (
          <Button onClick={() => change({ level: known[0]?.value ?? '' })}>{t.same(known[0].value)}</Button>
        )}
        <Button type="submit" kind="primary">
          {t.keepFirmware}
        </Button>
        <span role="status">{isKept ? t.kept : ''}</span>
      </div>
    </form>
  );
}
