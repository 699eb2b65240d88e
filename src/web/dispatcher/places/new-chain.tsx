import { useLocation } from 'preact-iso';
import { addresses, addressOf } from '../../../../shared/contract/addresses.ts';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../../shared/contract/site.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { newDevice, newLink } from '../../place/chain-edits.ts';
import { refresh, useDocument } from '../../store/documents.ts';
import { useDraft } from '../../store/use-draft.ts';
import { terms } from '../../words/terms.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { DrawnEdit } from './drawn-edit.tsx';
import { placeWords } from './words.ts';

/** Source, receiver, display: what most rooms have, to be changed rather than typed. */
function usualChain(name: string): Chain {
  let chain: Chain = { name, devices: [], links: [], wantedFormats: [] };
  for (const role of ['source', 'receiver', 'display'] as const)
    chain = { ...chain, devices: [...chain.devices, newDevice(role, terms().role[role], chain)] };
  for (let cable = 0; cable < 2; cable += 1) chain = { ...chain, links: [...chain.links, newLink(chain)] };
  return chain;
}

/** The first description of a chain, possibly while the client waits on the line. */
export function NewChainScreen({ siteId = '' }: { siteId?: string }) {
  const t = placeWords();
  const { query, route } = useLocation();
  const site = useDocument(paths.site(siteId)).body;
  const { draft, change, clear } = useDraft<{ chain: Chain | null }>(`chain ${siteId}`, { chain: null });
  const sending = useSending();
  if (draft === null) return <DeskScreen title={t.newChain}>{null}</DeskScreen>;
  const chain = draft.chain ?? usualChain(site?.client ?? '');
  const save = async () => {
    const added = await sending.send<ChainDocument>('POST', addressOf(addresses.siteChains, { id: siteId }), {
      body: chain,
    });
    if (added === null) return;
    await clear();
    await refresh(paths.site(siteId));
    route(
      query.call === undefined
        ? `/app/chains/${added.body.id}`
        : `/app/call?call=${query.call}&site=${siteId}&chain=${added.body.id}`,
    );
  };
  return (
    <DeskScreen title={site === null ? t.newChain : `${t.newChain}: ${site.client}`}>
      <Notice>{t.newChainHint}</Notice>
      <form
        class="stack"
        data-main
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <DrawnEdit chain={chain} problem={sending.problem} onChange={(next) => change({ chain: next })} />
        <SendingResult sending={sending} />
        <div class="send-row row">
          <Button type="submit" kind="primary" disabled={sending.isBusy}>
            {t.addChainNow}
          </Button>
        </div>
      </form>
    </DeskScreen>
  );
}
