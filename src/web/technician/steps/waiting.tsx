import { useLocation } from 'preact-iso';
import { waitingKinds } from '../../../../shared/contract/triage-names.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { WaitFacts } from '../../waiting/wait-facts.tsx';
import { WaitForm } from '../../waiting/wait-form.tsx';
import { waitingWords } from '../../waiting/words.ts';
import { placeWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { TicketPage } from './page.tsx';
import { Question } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** The ticket waits for something or somebody: what for, what stays in place, and the way back to work. */
export function WaitingQuestion({ work }: { work: Work }) {
  const t = waitingWords();
  return (
    <Question
      key="waiting"
      work={work}
      title={t.waitingTitle}
      answers={
        <>
          <Button kind="primary" large onClick={() => void work.send({ type: 'resumeWork', note: '' })}>
            {t.goOn}
          </Button>
          <LinkButton href={triageAddress(work.ticket.id, 'wait')}>{t.otherDate}</LinkButton>
        </>
      }
    >
      <WaitFacts
        ticket={work.ticket}
        zone={work.zone}
        placeIn={({ target }, chain) => placeWords(chain, target)}
      />
    </Question>
  );
}

const isMoment = (text: string | undefined): text is string => !Number.isNaN(Date.parse(text ?? ''));

/** Letting a ticket wait, or putting another date or reason in the place of the one that stands. */
export function WaitScreen({ ticketId = '' }: { ticketId?: string }) {
  const { route, query } = useLocation();
  const t = waitingWords();
  const kind = waitingKinds.find((each) => each === query.kind);
  const start = { ...(kind && { kind }), ...(isMoment(query.until) && { until: query.until }) };
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <Screen title={t.putOff}>
          <p>{t.lead}</p>
          {work.refusal !== null && <Refusal problem={work.refusal} />}
          <WaitForm
            ticketId={ticketId}
            zone={work.zone}
            start={start}
            send={async (command) => {
              const isDone = await work.send(command);
              if (isDone) route(triageAddress(ticketId), true);
              return isDone;
            }}
          />
          <QuestionPhoto work={work} />
          <LinkButton href={triageAddress(ticketId)}>{triageWords().toQuestion}</LinkButton>
        </Screen>
      )}
    </TicketPage>
  );
}
