import { useState } from 'preact/hooks';
import type { Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { isConnected } from '../api/connection.ts';
import { paths } from '../api/paths.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { Wipe } from '../parts/wipe.tsx';
import { type DocumentState, keepDocument, refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { inWords } from '../words/sentence.tsx';
import { placeAddress } from './common/addresses.ts';
import { lengthFrom } from './common/length.ts';
import { placeWords } from './common/place-words.ts';
import { placeOf } from './common/triage-addresses.ts';
import { type CorrectionDraft, correctionKey, noCorrection } from './correction-draft.ts';
import { corrected, countFrom, countNames, type FieldName, type Values, valuesAt } from './corrections.ts';
import { DescribeFields, valueWords } from './describe-fields.tsx';
import { describeWords } from './describe-words.ts';
import './technician.css';

/** Small corrections of the chain's description, on site. The whole chain is replaced, if nobody else did meanwhile. */
export function DescribeScreen({ ticketId = '', place: key = '' }: { ticketId?: string; place?: string }) {
  const t = describeWords();
  const ticket = useDocument(paths.ticket(ticketId)).body;
  const chain = useDocument(ticket === null ? null : paths.chain(ticket.chainId));
  const place = placeOf(key);
  if (place === null) return <Screen title={t.title}>{t.noSuchPlace}</Screen>;
  return (
    <Screen title={t.title}>
      <div>
        <LinkButton href={placeAddress(ticketId, place)}>{t.back}</LinkButton>
      </div>
      <DocumentView document={chain}>
        {(body) =>
          Object.keys(valuesAt(body.chain, place)).length === 0 ? (
            <Notice tone="caution">{t.noSuchPlace}</Notice>
          ) : (
            <Corrections
              ticketId={ticketId}
              symptom={ticket?.triage.symptom.kind}
              document={{ ...chain, body }}
              place={place}
            />
          )
        }
      </DocumentView>
    </Screen>
  );
}

type Properties = {
  ticketId: string;
  symptom: Symptom['kind'] | undefined;
  document: DocumentState<ChainDocument> & { body: ChainDocument };
  place: Place;
};

function Corrections({ ticketId, symptom, document, place }: Properties) {
  const t = describeWords();
  const { body: chain, etag } = document;
  const [draft, change, forget] = useDraftForm<CorrectionDraft>(correctionKey(ticketId, place), noCorrection);
  const [isSaved, setSaved] = useState(false);
  const sending = useSending();
  const now = valuesAt(chain.chain, place);
  const shown: Values = { ...now, ...draft.values };
  const hasMoved = draft.basedOn !== null && draft.basedOn.version !== chain.version;
  const isWrong =
    (shown.lengthM !== undefined && lengthFrom(shown.lengthM) === null) ||
    countNames.some((name) => countFrom(name, shown[name] ?? '') === null);
  const isChanged = (Object.keys(draft.values) as FieldName[]).some(
    (name) => draft.values[name] !== now[name],
  );
  const set = (name: FieldName, value: string) => {
    setSaved(false);
    sending.clear();
    const basedOn = draft.basedOn ?? { version: chain.version, values: now };
    change({ values: { ...draft.values, [name]: value }, basedOn });
  };
  const save = async () => {
    if (isWrong || hasMoved) return;
    const path = paths.chain(chain.id);
    const answer = await sending.send<ChainDocument>('PUT', path, {
      body: corrected(chain.chain, place, draft.values),
      ifMatch: etag ?? '',
    });
    // Refused because somebody was faster: with their version here, both sides are shown.
    if (answer === null) return void refresh(path);
    await keepDocument({ path, body: answer.body, etag: answer.etag, readAt: new Date().toISOString() });
    await forget();
    setSaved(true);
    void refresh(paths.chainAudit(chain.id, symptom));
    void refresh(paths.chainBudget(chain.id));
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>
        <strong>{placeWords(chain.chain, place)}</strong>
      </p>
      <Notice tone="caution">{t.notAChange}</Notice>
      {hasMoved && (
        <Moved
          chain={chain}
          now={now}
          draft={draft}
          onMine={() => {
            sending.clear();
            change({ basedOn: { version: chain.version, values: now } });
          }}
          onTheirs={() => {
            sending.clear();
            void forget();
          }}
        />
      )}
      <DescribeFields place={place} shown={shown} set={set} />
      {!isConnected.value && <Notice tone="caution">{t.offline}</Notice>}
      {isSaved && <Notice tone="good">{t.saved}</Notice>}
      {!hasMoved && <SendingResult sending={sending} />}
      <div class="row">
        <Button
          type="submit"
          kind="primary"
          disabled={!isChanged || hasMoved || isWrong || sending.isBusy || !isConnected.value}
        >
          {t.save}
        </Button>
        {!hasMoved && (
          <Wipe label={t.discard} draft={draft} empty={noCorrection} onWipe={forget} onUndo={change} />
        )}
      </div>
    </form>
  );
}

/** Somebody else described the chain anew meanwhile: both sides, and the question which it shall be. */
function Moved({
  chain,
  now,
  draft,
  onMine,
  onTheirs,
}: {
  chain: ChainDocument;
  now: Values;
  draft: CorrectionDraft;
  onMine: () => void;
  onTheirs: () => void;
}) {
  const t = describeWords();
  const from = draft.basedOn?.version ?? chain.version;
  const since = useDocument(
    from < chain.version ? paths.changesSince(chain.id, from, chain.version) : null,
  ).body;
  const names = Object.keys(draft.values) as FieldName[];
  return (
    <Card title={t.movedTitle}>
      <p role="alert">{t.movedLead}</p>
      <div class="two-sides">
        <section class="card">
          <h3>{t.yours}</h3>
          <ul>
            {names.map((name) => (
              <li key={name}>
                {t.fields[name]}: {valueWords(name, draft.values[name])}
              </li>
            ))}
          </ul>
        </section>
        <section class="card">
          <h3>{t.theirs}</h3>
          <ul>
            {names.map((name) => (
              <li key={name}>
                {t.fields[name]}: {valueWords(name, now[name])}
              </li>
            ))}
          </ul>
          <h4>{t.since}</h4>
          <ul>
            {(since?.changes ?? chain.changes).map((change) => (
              <li key={messageKey(change)}>{inWords(change)}</li>
            ))}
          </ul>
        </section>
      </div>
      <div class="row">
        <Button kind="primary" onClick={onMine}>
          {t.takeMine}
        </Button>
        <Button onClick={onTheirs}>{t.takeTheirs}</Button>
      </div>
    </Card>
  );
}
