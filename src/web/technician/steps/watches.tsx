import { useState } from 'preact/hooks';
import type { Occurrence, Watch } from '../../../../shared/contract/triage.ts';
import { minutesOf, occurrencesOf } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field } from '../../parts/field.tsx';
import { Badge } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { dayAndTime, lengthOfTime } from '../../words/times.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { TicketPage } from './page.tsx';
import { ReasonDialog } from './reason.tsx';
import { nearestAt, wallClock } from './time-of-day.ts';
import { OccurrenceList } from './watch.tsx';
import { watchWords } from './watch-words.ts';
import { watchesWords } from './watches-words.ts';
import { WithdrawDialog } from './withdraw.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** The watches of this round, newest first, to put right what is wrong in them. */
export function WatchesScreen({ ticketId = '' }: { ticketId?: string }) {
  return <TicketPage ticketId={ticketId}>{(work) => <Watches work={work} />}</TicketPage>;
}

type Asking =
  | { about: 'withdraw'; occurrence: Occurrence }
  | { about: 'time'; occurrence: Occurrence }
  | { about: 'void'; watch: Watch };

function Watches({ work }: { work: Work }) {
  const t = watchesWords();
  const [asking, setAsking] = useState<Asking | null>(null);
  const { round, watches } = work.ticket.triage;
  const ofRound = watches.filter((watch) => watch.round === round && watch.endedAt !== null);
  const done = () => setAsking(null);
  return (
    <Screen title={t.title}>
      <p>{t.lead}</p>
      {work.refusal !== null && asking === null && <Refusal problem={work.refusal} />}
      {ofRound.toReversed().map((watch) => (
        <WatchCard key={watch.id} work={work} watch={watch} ask={setAsking} />
      ))}
      <div>
        <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
      </div>
      {asking?.about === 'withdraw' && (
        <WithdrawDialog work={work} occurrence={asking.occurrence} onDone={done} />
      )}
      {asking?.about === 'time' && <TimeDialog work={work} occurrence={asking.occurrence} onDone={done} />}
      {asking?.about === 'void' && <VoidDialog work={work} watch={asking.watch} onDone={done} />}
    </Screen>
  );
}

function WatchCard({ work, watch, ask }: { work: Work; watch: Watch; ask: (asking: Asking) => void }) {
  const t = watchesWords();
  const seen = occurrencesOf(watch).length;
  const facts = [
    dayAndTime(watch.startedAt, work.zone),
    lengthOfTime(minutesOf(watch)),
    seen === 0 ? t.notSeen : t.seen(seen),
  ];
  return (
    <section class="card">
      <h2>{watchWords().purposeNames[watch.purpose]}</h2>
      {watch.voided === null ? (
        <p>{facts.join(' · ')}</p>
      ) : (
        <p>
          <s>{facts.join(' · ')}</s> <Badge>{t.voided}</Badge> {typed(watch.voided.reason)}
        </p>
      )}
      {watch.voided === null && (
        <>
          {watch.occurrences.length > 0 && (
            <OccurrenceList
              work={work}
              watch={watch}
              onWithdraw={(occurrence) => ask({ about: 'withdraw', occurrence })}
              onOtherTime={(occurrence) => ask({ about: 'time', occurrence })}
            />
          )}
          {work.may('voidWatch') && (
            <div>
              <Button onClick={() => ask({ about: 'void', watch })}>{t.voidDo}</Button>
            </div>
          )}
        </>
      )}
    </section>
  );
}

function TimeDialog({
  work,
  occurrence,
  onDone,
}: {
  work: Work;
  occurrence: Occurrence;
  onDone: () => void;
}) {
  const t = watchesWords();
  const [{ time }, write, forget] = useDraftForm(`time of ${occurrence.id}`, {
    time: wallClock(occurrence.at, work.zone),
  });
  const [isNoTime, setNoTime] = useState(false);
  return (
    <ReasonDialog
      about={`time of ${occurrence.id}`}
      title={t.timeTitle}
      lead={t.timeLead}
      suggestion={t.timeReason}
      action={t.timeDo}
      refusal={work.refusal}
      onDone={onDone}
      onReason={async (reason) => {
        const occurredAt = nearestAt(time, occurrence.at, work.zone);
        setNoTime(occurredAt === null);
        if (occurredAt === null) return false;
        const command = {
          type: 'correctOccurrence',
          occurrenceId: occurrence.id,
          occurredAt,
          reason,
        } as const;
        const isSent = await work.send(command);
        if (isSent) await forget();
        return isSent;
      }}
    >
      <Field
        label={t.time}
        type="time"
        step={1}
        value={time}
        error={isNoTime ? t.notATime : undefined}
        onInput={({ currentTarget }) => write({ time: currentTarget.value })}
      />
    </ReasonDialog>
  );
}

function VoidDialog({ work, watch, onDone }: { work: Work; watch: Watch; onDone: () => void }) {
  const t = watchesWords();
  return (
    <ReasonDialog
      about={`void ${watch.id}`}
      title={t.voidTitle}
      lead={t.voidLead}
      suggestion={t.voidReason}
      action={t.voidDo}
      refusal={work.refusal}
      onDone={onDone}
      onReason={(reason) => work.send({ type: 'voidWatch', watchId: watch.id, reason })}
    />
  );
}
