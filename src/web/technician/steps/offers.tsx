import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { TicketCommand, TicketCommandType } from '../../../../shared/contract/commands.ts';
import type { Offer, PlanReply } from '../../../../shared/contract/plan.ts';
import { filledIn } from '../../../../state-machines/triage/plan/fill-in.ts';
import { Button } from '../../parts/button.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { inWords, said } from '../../words/sentence.tsx';
import { declareAddress, triageAddress, waitAddress } from '../common/triage-addresses.ts';
import { waysItCame } from './how-it-came.tsx';
import { offerWords } from './offer-words.ts';
import { PlanSentence, Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import { Suspects } from './tests.tsx';
import type { Work } from './work.ts';

const lastOf = ({ steps }: Offer) => steps.at(-1);
const typeOf = (offer: Offer): TicketCommandType => lastOf(offer)?.type ?? 'note';

/** Where what is still to be said of an offer has a screen of its own: the screen. */
function screenOf({ ticket: { id } }: Work, offer: Offer): string | null {
  const last = filledIn(offer, {}).at(-1);
  if (last?.type === 'declareChange') return declareAddress(id, last);
  if (last?.type === 'waitFor') return waitAddress(id, last);
  if (last?.type === 'leaveInPlace') return triageAddress(id, 'leave-in');
  if (last?.type === 'nameCulprit') return triageAddress(id, 'culprit');
  return last?.type === 'escalate' ? triageAddress(id, 'escalate') : null;
}

/** Offers that a screen, one reason or nothing more completes; the others have their form on the stage's own screen. */
const isDrawn = (work: Work, offer: Offer): boolean =>
  (screenOf(work, offer) !== null && offer.steps[0]?.type !== 'recordChoice') ||
  offer.toSay.length === 0 ||
  (offer.toSay.length === 1 && (offer.toSay[0] ?? '').endsWith('reason'));

/** A way on as the plan offers it, with all that is known filled in. */
export function OfferButton({ work, offer, isNext = false }: { work: Work; offer: Offer; isNext?: boolean }) {
  const { route } = useLocation();
  const [isAsking, setAsking] = useState(false);
  const screen = screenOf(work, offer);
  const label = said(offer.text).text;
  const send = (commands: readonly TicketCommand[]) => work.sendInOrder(commands);
  const take = async () => {
    const commands = filledIn(offer, {});
    if (screen === null) {
      if (offer.toSay.length > 0) setAsking(true);
      else await send(commands);
    } else if (await send(commands.slice(0, -1))) route(screen);
  };
  return (
    <>
      <Button {...(isNext ? { kind: 'primary', large: true } : {})} onClick={() => void take()}>
        <span>{inWords(offer.text)}</span>
      </Button>
      {isAsking && (
        <ReasonDialog
          about={`${offer.key} ${work.ticket.id}`}
          title={label}
          action={label}
          refusal={work.refusal}
          onDone={() => setAsking(false)}
          onReason={(reason) => {
            const words = Object.fromEntries(offer.toSay.map((path) => [path, reason]));
            return send(filledIn(offer, words));
          }}
        />
      )}
    </>
  );
}

/**
 * A question that is nothing but what the plan says: its sentence, its first way on, and those beside it.
 *
 * @param refusal why what would come next can't, in place of the sentence
 */
export function OfferedQuestion({
  work,
  plan,
  refusal = null,
}: {
  work: Work;
  plan: PlanReply;
  refusal?: Work['refusal'];
}) {
  const [first, ...others] = plan.offers.filter((offer) => isDrawn(work, offer));
  return (
    <Question
      work={work}
      title={first === undefined ? offerWords().nothing : said(first.text).text}
      answers={
        <>
          {first !== undefined && <OfferButton key={first.key} work={work} offer={first} isNext />}
          {others.slice(0, mostBeside).map((offer) => (
            <OfferButton key={offer.key} work={work} offer={offer} />
          ))}
        </>
      }
      beside={<Suspects work={work} plan={plan} />}
    >
      {refusal === null ? <PlanSentence plan={plan} /> : <Refusal problem={refusal} />}
    </Question>
  );
}

/** More buttons than this nobody reads; the rest are under “other ways on”. Assumed. */
const mostBeside = 4;

/** Types that the screens of their stages have buttons or forms for. */
const hasOwnButton: ReadonlySet<TicketCommandType> = new Set([
  ...([
    'note',
    'reviewAudit',
    'answerWhatChanged',
    'recordAsFound',
    'recordLook',
    'goOnWithoutSide',
  ] as const),
  ...(['recordOccurrence', 'recordTry', 'endWatch', 'acceptReproduction', 'concludeSide'] as const),
  ...(['withdrawSide', 'beginSubstitution', 'applyChange', 'withdrawChange', 'judgeRetest'] as const),
  ...(['restoreChange', 'keepChange', 'nameCulprit', 'withdrawCulprit', 'chooseRemedy'] as const),
  ...(['withdrawRemedy', 'finishRemedy', 'faultCameBack', 'close', 'reopen', 'escalate'] as const),
  ...(['answerRequest', 'resubmit', 'recall'] as const),
]);
const isOnItsScreen = (offer: Offer): boolean => {
  const { menuDeviceId = null } = (lastOf(offer) ?? {}) as { menuDeviceId?: string | null };
  const type = typeOf(offer);
  return hasOwnButton.has(type) || offer.test !== null || (type === 'startWatch' && menuDeviceId === null);
};

/** The plan's other ways on, of which the question above has no button. */
export function OtherWays({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = offerWords();
  const asked = waysItCame(plan);
  const others = plan.offers
    .slice(1)
    .filter((offer) => !isOnItsScreen(offer) && isDrawn(work, offer) && !asked.includes(offer));
  if (others.length === 0) return null;
  return (
    <details class="question">
      <summary>
        <h2>{t.otherWays}</h2>
      </summary>
      <ul class="list">
        {others.map((offer) => (
          <li key={offer.key}>
            <OfferButton work={work} offer={offer} />
          </li>
        ))}
      </ul>
    </details>
  );
}
