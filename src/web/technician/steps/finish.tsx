import { useState } from 'preact/hooks';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { dayKey } from '../../words/times.ts';
import { caseWords } from './case-words.ts';
import { type InstalledDraft, installedFrom, likelyReplaced } from './installed.ts';
import { InstalledParts } from './installed-parts.tsx';
import { Question } from './question.tsx';
import { WithdrawRemedy } from './remedy.tsx';
import { type Work, watchFromNow } from './work.ts';

/** The remedy is chosen: do it, and say how the chain is left. */
export function FinishQuestion({ work }: { work: Work }) {
  const t = caseWords();
  const { id, triage } = work.ticket;
  const { remedy } = triage;
  const [draft, write, forget] = useDraftForm<InstalledDraft>(`as left ${id} ${triage.round}`, { parts: {} });
  const [isLacking, setLacking] = useState(false);
  const installed = installedFrom(draft);
  const finish = async (watches: boolean) => {
    setLacking(installed === null);
    if (installed === null) return;
    const done = { type: 'finishRemedy', asLeftChainVersion: work.chainVersion, installed } as const;
    const watch = watchFromNow(work, null);
    const isTaken = watches && work.takes([done, watch]) ? work.sendInOrder([done, watch]) : work.send(done);
    if (await isTaken) await forget();
  };
  return (
    <Question
      work={work}
      title={t.finishTitle}
      answers={
        <>
          {isLacking && installed === null && (
            <Notice tone="caution" announce>
              {t.partLacks}
            </Notice>
          )}
          <Button kind="primary" large onClick={() => void finish(true)}>
            {t.finishAndWatch}
          </Button>
          <Button large onClick={() => void finish(false)}>
            {t.finish}
          </Button>
          <WithdrawRemedy work={work} />
        </>
      }
    >
      <Notice tone="caution">{t.care}</Notice>
      {remedy !== null && <p class="to-do">{typed(remedy.what)}</p>}
      {remedy?.kind !== 'noFaultFound' && (
        <InstalledParts
          chain={work.known.chain?.chain ?? work.chain}
          likely={likelyReplaced(triage)}
          today={dayKey(new Date().toISOString(), work.zone)}
          parts={draft.parts}
          onChange={(parts) => write({ parts })}
        />
      )}
    </Question>
  );
}
