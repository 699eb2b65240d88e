import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { addresses } from '../../../../shared/contract/addresses.ts';
import type { SiteSummary } from '../../../../shared/contract/site.ts';
import type { Intake, Ticket } from '../../../../shared/contract/ticket.ts';
import { priorities } from '../../../../shared/contract/ticket-names.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Choices } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { Wipe } from '../../parts/wipe.tsx';
import { keepDocument, useDocument } from '../../store/documents.ts';
import { useDraft } from '../../store/use-draft.ts';
import { terms } from '../../words/terms.ts';
import { Chips } from '../common/chips.tsx';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { type Answers, intakeOf, noAnswers } from './answers.ts';
import { callDraft, callToGoOnWith, holdCall } from './begun-calls.ts';
import { Beside, SameChain } from './beside.tsx';
import { OtherCalls } from './other-calls.tsx';
import { Questions } from './questions.tsx';
import { SiteFinder } from './site-finder.tsx';
import { callWords } from './words.ts';

type Priority = Ticket['priority'];
type Draft = {
  typed: string;
  siteId: string | null;
  chainId: string | null;
  answers: Answers;
  priority: Priority;
  seen: string[];
};
const empty: Draft = {
  typed: '',
  siteId: null,
  chainId: null,
  answers: noAnswers,
  priority: 'normal',
  seen: [],
};

/** A client is on the line: find the place, ask, open the ticket. What is typed survives a reload; two tabs are two calls. */
export function CallScreen() {
  const { query, path, route } = useLocation();
  const { call: id } = query;
  useEffect(() => {
    if (id !== undefined) return holdCall(id);
    let isHere = true;
    void callToGoOnWith().then((next) => {
      if (isHere) route(`${path}?${new URLSearchParams({ ...query, call: next })}`, true);
    });
    return () => {
      isHere = false;
    };
  }, [id]);
  if (id === undefined) return <DeskScreen title={callWords().title}>{null}</DeskScreen>;
  return <Call key={id} id={id} />;
}

function Call({ id }: { id: string }) {
  const t = callWords();
  const { draft, change, clear } = useDraft<Draft>(callDraft(id), empty);
  const { query } = useLocation();
  // A site or chain that was just added comes back to the call that it was added for.
  const given = { siteId: query.site ?? null, chainId: query.chain ?? null };
  const siteId = draft?.siteId ?? given.siteId;
  const site = useDocument(siteId === null ? null : paths.site(siteId)).body;
  const form = useRef<HTMLDivElement>(null);
  if (draft === null) return <DeskScreen title={t.title}>{null}</DeskScreen>;
  const take = (chosen: SiteSummary) => {
    const only = chosen.chains.length === 1 ? (chosen.chains[0]?.id ?? null) : null;
    void keepDocument({
      path: paths.site(chosen.id),
      body: chosen,
      etag: null,
      readAt: new Date().toISOString(),
    });
    change({ siteId: chosen.id, chainId: only, seen: [] });
    setTimeout(() => form.current?.querySelector<HTMLElement>('input, a[href]')?.focus(), 60);
  };
  return (
    <DeskScreen
      title={t.title}
      tools={<Wipe label={t.startOver} draft={draft} empty={empty} onWipe={clear} onUndo={change} />}
    >
      {siteId === null && (
        <SiteFinder call={id} typed={draft.typed} onType={(typed) => change({ typed })} onChoose={take} />
      )}
      <OtherCalls id={id} />
      <div ref={form}>
        {site !== null && siteId !== null && (
          <Asking
            call={id}
            site={site}
            draft={{ ...draft, siteId, chainId: draft.chainId ?? given.chainId ?? onlyChainOf(site) }}
            change={(part) => change({ siteId, ...part })}
            clear={clear}
          />
        )}
      </div>
    </DeskScreen>
  );
}

const onlyChainOf = ({ chains }: SiteSummary): string | null =>
  chains.length === 1 ? (chains[0]?.id ?? null) : null;

function Asking({
  call,
  site,
  draft,
  change,
  clear,
}: {
  call: string;
  site: SiteSummary;
  draft: Draft;
  change: (part: Partial<Draft>) => void;
  clear: () => Promise<void>;
}) {
  const [t, d] = [callWords(), deskWords()];
  const { route } = useLocation();
  const { chainId, answers } = draft;
  const chain = useDocument(chainId === null ? null : paths.chain(chainId)).body?.chain ?? null;
  const sending = useSending();
  const [lacks, setLacks] = useState<string | null>(null);
  const open = async () => {
    const { symptom } = answers;
    if (chainId === null || symptom === null) {
      setLacks(chainId === null ? t.chainMissing : t.symptomMissing);
      return;
    }
    setLacks(null);
    const intake: Intake = intakeOf({ ...answers, symptom });
    const body = { siteId: site.id, chainId, intake, priority: draft.priority, seenDuplicates: draft.seen };
    const opened = await sending.send<Ticket>('POST', addresses.tickets, { body });
    if (opened === null) return;
    await keepDocument({
      path: paths.ticket(opened.body.id),
      body: opened.body,
      etag: opened.etag,
      readAt: new Date().toISOString(),
    });
    await clear();
    route(`/app/call/${opened.body.id}`);
  };
  return (
    <div class="beside">
      <form
        class="stack"
        data-main
        onSubmit={(event) => {
          event.preventDefault();
          void open();
        }}
      >
        {site.chains.length === 0 && (
          <Notice tone="caution">
            <span>{t.noChain}</span>
            <div>
              <LinkButton href={`/app/sites/${site.id}/chains/new?call=${call}`} kind="primary">
                {t.describeChain}
              </LinkButton>
            </div>
          </Notice>
        )}
        {site.chains.length > 1 && (
          <Choices
            label={t.whichChain}
            options={site.chains.map(({ id, name }) => ({ value: id, label: name }))}
            value={chainId}
            onChoose={(chosen) => change({ chainId: chosen, seen: [] })}
          />
        )}
        {chainId !== null && (
          <SameChain chainId={chainId} seen={draft.seen} onAnother={(seen) => change({ seen })} />
        )}
        {site.chains.length > 0 && (
          <>
            <Questions
              chain={chain}
              answers={answers}
              contact={site.contact}
              onChange={(part) => change({ answers: { ...answers, ...part } })}
            />
            <Chips
              label={d.priority}
              options={priorities.map((value) => ({ value, label: terms().priority[value] }))}
              value={draft.priority}
              onChoose={(priority) => change({ priority })}
            />
            {lacks !== null && (
              <Notice tone="refusal" announce>
                {lacks}
              </Notice>
            )}
            <SendingResult sending={sending} />
            <div class="row send-row">
              <Button type="submit" kind="primary" disabled={sending.isBusy}>
                {t.open}
              </Button>
              <kbd>{d.ctrl}+Enter</kbd>
              <span class="soft">{t.kept}</span>
            </div>
          </>
        )}
      </form>
      <Beside site={site} chainId={chainId} />
    </div>
  );
}
