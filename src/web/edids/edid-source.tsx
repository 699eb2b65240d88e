import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { readEdidInput } from '../../../shared/signal/edid/index.ts';
import { readFile } from '../api/client.ts';
import { paths } from '../api/paths.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { edidWords } from './words.ts';

/** An EDID of 256 blocks as hexadecimal with spaces, and what a tool prints around it. Assumed. */
const mostText = 200_000;

type Properties = { ticketId: string; label: string; text: string; onText: (text: string) => void };

/** Where an EDID comes from: pasted, a file, or one of the ticket's evidence. All of it ends as text in one field. */
export function EdidSource({ ticketId, label, text, onText }: Properties) {
  const t = edidWords();
  const [hasFailed, setFailed] = useState(false);
  const take = async (file: Blob | null | undefined) => {
    const content = await file?.arrayBuffer().catch(() => null);
    setFailed(!content);
    if (content) onText(hexLines(readEdidInput(new Uint8Array(content)).bytes));
  };
  return (
    <fieldset class="stack edid-source">
      <legend>{label}</legend>
      <OfEvidence
        ticketId={ticketId}
        onChoose={(id) =>
          void readFile(addressOf(addresses.evidenceContent, { id })).then((file) => take(file))
        }
      />
      <TextField
        label={t.paste}
        rows={4}
        spellcheck={false}
        autocomplete="off"
        maxLength={mostText}
        value={text}
        onInput={({ currentTarget }) => onText(currentTarget.value)}
      />
      <div class="row">
        <label class="button button-plain">
          <input
            class="for-readers-only"
            type="file"
            onChange={({ currentTarget }) => {
              void take(currentTarget.files?.[0]);
              currentTarget.value = '';
            }}
          />
          {t.choose}
        </label>
      </div>
      {hasFailed && (
        <Notice tone="refusal" announce>
          {t.notRead}
        </Notice>
      )}
    </fieldset>
  );
}

function OfEvidence({ ticketId, onChoose }: { ticketId: string; onChoose: (evidenceId: string) => void }) {
  const t = edidWords();
  const evidence = useDocument(paths.evidence(ticketId)).body;
  const zone = useZone(null);
  const items = (evidence?.items ?? []).filter(
    ({ kind, withdrawn }) => kind === 'edid' && withdrawn === null,
  );
  if (items.length === 0) return null;
  const nameOf = ({ at, fileName, description }: EvidenceItem): string =>
    [dayAndTime(at, zone), fileName ?? '', typeof description === 'string' ? description : '']
      .filter((part) => part !== '')
      .join(' · ');
  return (
    <SelectField
      label={t.fromEvidence}
      value=""
      onChoose={(id) => id !== '' && onChoose(id)}
      options={[
        { value: '', label: t.none },
        ...items.map((item) => ({ value: item.id, label: nameOf(item) })),
      ]}
    />
  );
}

/** Sixteen bytes a line. */
const hexLines = (bytes: Uint8Array): string =>
  Array.from(bytes, (value) => value.toString(16).padStart(2, '0'))
    .join('')
    .replace(/.{32}(?=.)/g, '$&\n');
