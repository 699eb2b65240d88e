import { useState } from 'preact/hooks';
import { longest } from '../../../shared/contract/limits.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { Tick } from '../parts/tick.tsx';
import { putFile } from '../store/outbox.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { reportWords } from './report-words.ts';
import { SignatureField } from './signature-field.tsx';
import { isDrawn, type Stroke, signaturePicture } from './strokes.ts';

type Draft = { name: string; strokes: Stroke[]; isByName: boolean };
const nothing: Draft = { name: '', strokes: [], isByName: false };

/** Name and signature of whoever read the report; kept as evidence of the ticket, without signal too. */
export function Signing({
  ticket,
  onSigned,
}: {
  ticket: Pick<Ticket, 'id' | 'sequence'>;
  onSigned: () => void;
}) {
  const t = reportWords();
  const [draft, write, forget] = useDraftForm<Draft>(`report ${ticket.id}`, nothing);
  const [isLacking, setLacking] = useState(false);
  const { strokes, isByName } = draft;
  const name = draft.name.trim();
  const isWhole = name !== '' && (isByName || isDrawn(strokes));
  const sign = async () => {
    setLacking(!isWhole);
    if (!isWhole) return;
    const picture = await signaturePicture(isByName ? [] : strokes, name);
    const tie = { deviceId: null, portId: null, linkId: null, watchId: null, changeId: null };
    const about = { kind: 'document', description: name, span: null, clock: {}, takenAt: null } as const;
    await putFile(ticket, picture, { ...about, tie: { ...tie, shows: 'signature' } }, 'signature.png');
    await forget();
    onSigned();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void sign();
      }}
    >
      <p>{t.signLead}</p>
      <Field
        label={t.name}
        value={draft.name}
        maxLength={longest.line}
        autocomplete="off"
        onInput={({ currentTarget }) => write({ name: currentTarget.value })}
      />
      {!isByName && <SignatureField strokes={strokes} onChange={(drawn) => write({ strokes: drawn })} />}
      <Tick label={t.byName} isOn={isByName} onChange={(isOn) => write({ isByName: isOn })} />
      {isLacking && !isWhole && (
        <Notice tone="caution" announce>
          {t.lacks}
        </Notice>
      )}
      <div>
        <Button type="submit" kind="primary" large>
          {t.sign}
        </Button>
      </div>
    </form>
  );
}
