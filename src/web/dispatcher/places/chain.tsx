import { useState } from 'preact/hooks';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../../shared/contract/site.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { lazyPart } from '../../parts/lazy-part.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { Wipe } from '../../parts/wipe.tsx';
import { keepDocument, refresh, useDocument } from '../../store/documents.ts';
import { useDraft } from '../../store/use-draft.ts';
import { frameWords } from '../../words/frame.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { ChainForm } from './chain-form.tsx';
import { placeWords } from './words.ts';

const ChainVersions = lazyPart(() =>
  import('../../place/chain-versions.tsx').then((module) => module.ChainVersions),
);
const DrawnChain = lazyPart(() => import('../../place/drawn-chain.tsx').then((module) => module.DrawnChain));

/** A chain: drawn, its versions with what differs, and as a form that is saved as a whole. */
export function ChainScreen({ chainId = '' }: { chainId?: string }) {
  const [t, d] = [placeWords(), deskWords()];
  const document = useDocument(paths.chain(chainId));
  const { body } = document;
  return (
    <DeskScreen
      title={body?.chain.name ?? d.chain}
      tools={body !== null && <LinkButton href={`/app/sites/${body.siteId}`}>{d.toSite}</LinkButton>}
    >
      <DocumentView document={document}>
        {(chain) => (
          <>
            <Card title={t.version(chain.version)}>
              <DrawnChain chain={chain} />
            </Card>
            <Card title={t.versions}>
              <ChainVersions chainId={chainId} newest={chain.version} siteId={chain.siteId} />
            </Card>
            <details class="more not-printed">
              <summary>{t.editChain}</summary>
              <Edit document={chain} etag={document.etag} />
            </details>
          </>
        )}
      </DocumentView>
    </DeskScreen>
  );
}

function Edit({ document, etag }: { document: ChainDocument; etag: string | null }) {
  const t = placeWords();
  type Draft = { chain: Chain | null; etag: string | null };
  const { draft, change, clear } = useDraft<Draft>(`chain ${document.id}`, { chain: null, etag: null });
  const sending = useSending();
  const [isSaved, setSaved] = useState(false);
  if (draft === null) return null;
  const chain = draft.chain ?? document.chain;
  const isBehind = draft.chain !== null && draft.etag !== null && draft.etag !== etag;
  const save = async () => {
    const path = paths.chain(document.id);
    // The draft's own version: a change by somebody else in the meantime is refused, not written over.
    const ifMatch = draft.etag ?? etag ?? '';
    const done = await sending.send<ChainDocument>('PUT', path, { body: chain, ifMatch });
    if (done === null) return void refresh(path);
    await clear();
    setSaved(true);
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    void refresh(paths.chainVersions(document.id));
  };
  return (
    <form
      class="stack"
      data-main
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <ChainForm
        chain={chain}
        problem={sending.problem}
        onChange={(next) => {
          setSaved(false);
          change({ chain: next, etag: draft.etag ?? etag });
        }}
      />
      {isBehind && (
        <Notice tone="caution">
          <span>{t.conflict}</span>
          <div class="row">
            <Button onClick={() => change({ etag })}>{frameWords().tryAgain}</Button>
            <Button onClick={() => void clear()}>{deskWords().change}</Button>
          </div>
        </Notice>
      )}
      <SendingResult sending={sending} />
      {isSaved && (
        <Notice tone="good" announce>
          {frameWords().saved}
        </Notice>
      )}
      <div class="send-row row">
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {t.saveChain}
        </Button>
        <Wipe draft={draft} empty={{ chain: null, etag: null }} onWipe={clear} onUndo={change} />
      </div>
    </form>
  );
}
