import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { FirmwareLevel } from '../../../shared/contract/organisation.ts';
import { read } from '../api/client.ts';
import { type DocumentPath, paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field } from '../parts/field.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { frameWords } from '../words/frame.ts';
import { SectionScreen } from './section-screen.tsx';
import { adminWords } from './words.ts';

type Input = { model: string; minimum: string; note: string };

/** The lowest firmware that the firm accepts, per model. */
export function FirmwareScreen() {
  const t = adminWords();
  const levels = useDocument(paths.firmwareLevels);
  return (
    <SectionScreen title={t.firmware}>
      <DocumentView document={levels}>
        {({ items }) => (
          <>
            {items.length === 0 && <p>{t.noLevels}</p>}
            {items.map((level) => (
              <Card key={`${level.id} ${level.version}`} title={level.model}>
                <LevelForm level={level} />
              </Card>
            ))}
            <Card title={t.addLevel}>
              <LevelForm key={items.length} level={null} />
            </Card>
          </>
        )}
      </DocumentView>
    </SectionScreen>
  );
}

function LevelForm({ level }: { level: FirmwareLevel | null }) {
  const t = adminWords();
  // Only what was typed is a draft: what somebody else saves meanwhile shows beside it.
  const [draft, change, forget] = useDraftForm<Partial<Input>>(`level ${level?.id ?? 'new'}`, {});
  const { model, minimum, note } = { ...(level ?? { model: '', minimum: '', note: '' }), ...draft };
  const input: Input = { model, minimum, note };
  const sending = useSending();
  const send = async (method: 'PUT' | 'DELETE') => {
    if (level === null) return;
    const path = addressOf(addresses.firmwareLevel, { id: level.id });
    const now = await read(path as DocumentPath<FirmwareLevel>);
    // Somebody else's change since it was shown here is refused, not written over.
    const ifMatch = now.kind === 'ok' && now.body.version === level.version ? (now.etag ?? '') : '"older"';
    const sent = await sending.send(method, path, {
      ifMatch,
      ...(method === 'PUT' ? { body: input } : {}),
    });
    if (sent !== null) await forget();
    await refresh(paths.firmwareLevels);
  };
  const add = async () => {
    if ((await sending.send('POST', addresses.firmwareLevels, { body: input })) === null) return;
    await forget();
    await refresh(paths.firmwareLevels);
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void (level === null ? add() : send('PUT'));
      }}
    >
      <div class="admin-fields">
        <Field
          label={t.model}
          required
          maxLength={longest.line}
          value={input.model}
          onInput={({ currentTarget }) => change({ model: currentTarget.value })}
        />
        <Field
          label={t.minimum}
          required
          maxLength={longest.line}
          value={input.minimum}
          onInput={({ currentTarget }) => change({ minimum: currentTarget.value })}
        />
        <Field
          label={t.note}
          optional
          maxLength={longest.note}
          value={input.note}
          onInput={({ currentTarget }) => change({ note: currentTarget.value })}
        />
      </div>
      <SendingResult sending={sending} />
      <div class="row">
        <Button type="submit" kind={level === null ? 'primary' : 'plain'} disabled={sending.isBusy}>
          {level === null ? t.addLevel : frameWords().save}
        </Button>
        {level !== null && (
          <Button kind="quiet" disabled={sending.isBusy} onClick={() => void send('DELETE')}>
            {t.removeLevel(level.model)}
          </Button>
        )}
      </div>
    </form>
  );
}
