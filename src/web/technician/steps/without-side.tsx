import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Offer } from '../../../../shared/contract/plan.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { inWords } from '../../words/sentence.tsx';
import { triageAddress } from '../common/triage-addresses.ts';
import { lookWords } from './look-words.ts';
import { Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import type { Work } from './work.ts';

/** Going on although no side is proven, with why. */
export function WithoutSide({ work }: { work: Work }) {
  const t = lookWords();
  const [isAsked, setAsked] = useState(false);
  if (!work.may('goOnWithoutSide')) return null;
  return (
    <>
      <Button onClick={() => setAsked(true)}>{t.goOn}</Button>
      {isAsked && (
        <ReasonDialog
          about={`without side ${work.ticket.id}`}
          title={t.goOnTitle}
          lead={t.goOnLead}
          suggestion={t.goOnReason}
          action={t.goOn}
          refusal={work.refusal}
          onDone={() => setAsked(false)}
          onReason={(reason) => work.send({ type: 'goOnWithoutSide', reason })}
        />
      )}
    </>
  );
}

/** Readings or witnesses say where it lies: what an offer concludes from them. */
export function concludesByLooks(offer: Offer | undefined): boolean {
  const [step] = offer?.steps ?? [];
  return step?.type === 'concludeSide' && 'from' in step && step.from !== 'menu';
}

export function TraceQuestion({
  work,
  offer,
  sentence,
}: {
  work: Work;
  offer: Offer;
  sentence: ComponentChildren;
}) {
  const t = lookWords();
  return (
    <Question
      work={work}
      title={t.traceTitle}
      answers={
        <>
          <Button
            kind="primary"
            large
            onClick={async () => {
              for (const step of offer.steps)
                if (!(await work.send(step as Parameters<Work['send']>[0]))) return;
            }}
          >
            {inWords(offer.text)}
          </Button>
          <LinkButton href={triageAddress(work.ticket.id, 'changes')}>{t.menuInstead}</LinkButton>
        </>
      }
    >
      {sentence}
    </Question>
  );
}
