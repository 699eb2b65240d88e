import { useEffect, useState } from 'preact/hooks';
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
import { editWords } from './edit-words.ts';
import { placeWords } from './words.ts';

const ChainVersions = lazyPart(() =>
  import('../../place/chain-versions.tsx').then((module) => module.ChainVersions),
);
const DrawnEdit = lazyPart(() => import('./drawn-edit.tsx').then((module) => module.DrawnEdit));
const DrawnChain = lazyPart(() => import('../../place/drawn-chain.tsx').then((module) => module.DrawnChain));

/** A chain: drawn, changed on its drawing and saved as a whole, and its versions with what differs. */
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
            <Drawn document={chain} etag={document.etag} />
            <Card title={t.versions}>
              <ChainVersions chainId={chainId} newest={chain.version} siteId={chain.siteId} />
            </Card>
          </>
        )}
      </DocumentView>
    </DeskScreen>
  );
}

type Draft = { chain: Chain | null; etag: string | null };
const noDraft: Draft = { chain: null, etag: null };
type Properties = { document: ChainDocument; etag: string | null };

/** The drawing to look at; the same drawing to change, once that is asked for or was begun before. */
function Drawn({ document, etag }: Properties) {
  const t = placeWords();
  const draft = useDraft<Draft>(`chain ${document.id}`, noDraft);
  const [isAsked, setAsked] = useState(false);
  const [isSaved, setSaved] = useState(false);
  const isBegun = draft.draft !== null && draft.draft.chain !== null;
  // Begun before: it stays open when all of it is taken back.
  useEffect(() => {
    if (isBegun) setAsked(true);
  }, [isBegun]);
  const isEditing = isAsked || isBegun;
  return (
    <Card title={t.version(document.version)}>
      {isSaved && !isEditing && (
        <Notice tone="good" announce>
          {frameWords().saved}
        </Notice>
      )}
      {isEditing ? (
        <Edit
          {...{ document, etag, draft }}
          onEnd={(saved) => {
            setAsked(false);
            setSaved(saved);
          }}
        />
      ) : (
        <>
          <DrawnChain chain={document} />
          <div class="row not-printed">
            <Button onClick={() => setAsked(true)}>{t.editChain}</Button>
          </div>
        </>
      )}
    </Card>
  );
}

function Edit({
  document,
  etag,
  draft: { draft, change, clear },
  onEnd,
}: Properties & {
  draft: ReturnType<typeof useDraft<Draft>>;
  onEnd: (isSaved: boolean) => void;
}) {
  const t = placeWords();
  const sending = useSending();
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
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    onEnd(true);
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
      <DrawnEdit
        chain={chain}
        problem={sending.problem}
        onChange={(next) => change({ chain: next, etag: draft.etag ?? etag })}
      />
      {isBehind && (
        <Notice tone="caution">
          <span>{t.conflict}</span>
          <div class="row">
            <Button onClick={() => change({ etag })}>{editWords().keepMine}</Button>
            <Button onClick={() => void clear()}>{editWords().takeTheirs}</Button>
          </div>
        </Notice>
      )}
      <SendingResult sending={sending} />
      <div class="send-row row">
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {t.saveChain}
        </Button>
        <Wipe draft={draft} empty={noDraft} onWipe={clear} onUndo={change} />
        {draft.chain === null && (
          <Button kind="quiet" onClick={() => onEnd(false)}>
            {frameWords().cancel}
          </Button>
        )}
      </div>
    </form>
  );
}
