import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import type { Occurrence, Symptom, Watch } from '../../../../shared/contract/triage.ts';
import { occurrencesOf } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { Badge } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { typed } from '../../parts/typed.tsx';
import { clockTime } from '../../words/times.ts';
import { placeWords } from '../common/place-words.ts';
import { conditionWords } from './condition-words.ts';
import { menuAnswerWords } from './menu-answer-words.ts';
import { QuestionPhoto } from './question-photo.tsx';
import { soFar } from './sure.ts';
import { useNow, useScreenOn } from './use-now.ts';
import { EndInto } from './watch-end.tsx';
import { watchWords } from './watch-words.ts';
import { watchesWords } from './watches-words.ts';
import { WithdrawDialog } from './withdraw.tsx';
import type { Work } from './work.ts';

/** A thumb that bounces within this time has pressed once; an occurrence is seen, said and over later. Assumed. */
const onePressMs = 800;

/** A running watch. The lower two thirds are for a thumb that nobody looks at. */
export function WatchQuestion({ work, watch }: { work: Work; watch: Watch }) {
  const t = watchWords();
  const now = useNow(1000);
  const isScreenOn = useScreenOn();
  const [withdrawing, setWithdrawing] = useState<Occurrence | null>(null);
  const [said, setSaid] = useState('');
  const pressedAt = useRef(0);
  const seen = occurrencesOf(watch);
  const judged = soFar(work.ticket.triage, watch, now);
  const press = async (command: TicketCommand, words: string) => {
    const moment = performance.now();
    if (moment - pressedAt.current < onePressMs && pressedAt.current !== 0) return false;
    pressedAt.current = moment;
    // Two for the fault, one for a good try: to be told apart without looking.
    navigator.vibrate?.(command.type === 'recordTry' ? 60 : [120, 80, 120]);
    const isTaken = await work.send(command);
    if (isTaken) setSaid(words);
    return isTaken;
  };
  const end = () => work.send({ type: 'endWatch' });
  const last = seen.at(-1) ?? null;
  return (
    <>
      <Screen title={purposeWords(work, watch)}>
        <div class="watch-state">
          <div class="watch-row">
            <Figure label={t.running}>{elapsed(watch.startedAt, now)}</Figure>
            <Figure label={t.count}>
              <span class="watch-count">{seen.length}</span>
            </Figure>
            {watch.mode === 'trigger' && <Figure label={t.tries}>{watch.tries}</Figure>}
            <span class="watch-ends">
              {last !== null && (
                <Button onClick={() => setWithdrawing(last)} aria-label={t.undo}>
                  {t.undoShort}
                </Button>
              )}
              {watch.mode !== 'look' && (
                <Button
                  kind={judged.isDone ? 'primary' : 'plain'}
                  onClick={() => void end()}
                  aria-label={t.end}
                >
                  {t.endShort}
                </Button>
              )}
            </span>
          </div>
          {judged.progress !== null && (
            <progress class="watch-progress" value={judged.progress} max={1} aria-label={judged.text} />
          )}
          <p>
            {judged.isDone && <span aria-hidden="true">✓ </span>}
            {judged.text}
            {judged.more !== null && <> · {judged.more}</>}
          </p>
        </div>
        {judged.isDone && <EndInto work={work} watch={watch} />}
        {work.refusal !== null && <Refusal problem={work.refusal} />}
        <p role="status" class="for-readers-only">
          {said}
        </p>
      </Screen>
      <Presses watch={watch} symptom={work.ticket.triage.symptom} press={press} end={end} />
      <QuestionPhoto work={work} />
      <details class="watch-details">
        <summary>{t.list}</summary>
        <p class="soft">{isScreenOn ? t.screenOn : t.screenOff}</p>
        <OccurrenceList work={work} watch={watch} onWithdraw={setWithdrawing} />
      </details>
      {withdrawing !== null && (
        <WithdrawDialog work={work} occurrence={withdrawing} onDone={() => setWithdrawing(null)} />
      )}
    </>
  );
}

function Figure({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    <span class="watch-figure">
      <span class="soft">{label}</span>
      <strong class="figures">{children}</strong>
    </span>
  );
}

function Presses({
  watch,
  symptom,
  press,
  end,
}: {
  watch: Watch;
  symptom: Symptom;
  /** Whether it was taken. */
  press: (command: TicketCommand, words: string) => Promise<boolean>;
  end: () => Promise<unknown>;
}) {
  const t = watchWords();
  const count = occurrencesOf(watch).length + 1;
  const occurrence = (menu: Occurrence['menu']): TicketCommand => ({
    type: 'recordOccurrence',
    durationS: null,
    menu,
    description: '',
  });
  if (watch.mode === 'look') {
    const menus = watch.purpose === 'side' ? (['stayed', 'vanished'] as const) : [null];
    const words = conditionWords();
    const labels = { stayed: words.isThereMenuClean, vanished: words.isThereMenuToo };
    const isThere = async (menu: Occurrence['menu']) => {
      if (await press(occurrence(menu), t.recorded(count))) await end();
    };
    return (
      <div class="presses">
        <Press tone="one" label={words.isNotThere} onPress={() => void end()} />
        {menus.map((menu) => (
          <Press
            key={menu}
            tone="other"
            label={menu === null ? words.isThere : labels[menu]}
            onPress={() => void isThere(menu)}
          />
        ))}
      </div>
    );
  }
  if (watch.purpose === 'side') {
    const menuAnswer = menuAnswerWords(symptom);
    return (
      <div class="presses">
        <Press
          tone="one"
          label={menuAnswer.stayed}
          onPress={() => press(occurrence('stayed'), `${t.recorded(count)}, ${menuAnswer.said.stayed}`)}
        />
        <Press
          tone="other"
          label={menuAnswer.vanished}
          onPress={() => press(occurrence('vanished'), `${t.recorded(count)}, ${menuAnswer.said.vanished}`)}
        />
        {watch.mode === 'trigger' && (
          <Press
            tone="one"
            label={t.wentWell}
            onPress={() => press({ type: 'recordTry' }, t.tryRecorded(watch.tries + 1))}
          />
        )}
      </div>
    );
  }
  return (
    <div class="presses">
      {watch.mode === 'trigger' && (
        <Press
          tone="one"
          label={t.wentWell}
          onPress={() => press({ type: 'recordTry' }, t.tryRecorded(watch.tries + 1))}
        />
      )}
      <Press
        tone="other"
        label={watch.mode === 'trigger' ? t.failed : t.happened}
        onPress={() => press(occurrence(null), t.recorded(count))}
      />
    </div>
  );
}

function Press({ tone, label, onPress }: { tone: 'one' | 'other'; label: string; onPress: () => unknown }) {
  return (
    <button type="button" class={`press press-${tone}`} onClick={onPress}>
      {label}
    </button>
  );
}

/** What a watch saw, newest first, with what was withdrawn of it. */
export function OccurrenceList({
  work,
  watch,
  onWithdraw,
  onOtherTime,
}: {
  work: Work;
  watch: Watch;
  onWithdraw: (occurrence: Occurrence) => void;
  /** Left out where no time is put right. */
  onOtherTime?: (occurrence: Occurrence) => void;
}) {
  const t = watchWords();
  if (watch.occurrences.length === 0) return <p>{t.nothingYet}</p>;
  return (
    <ul class="list">
      {watch.occurrences.toReversed().map((occurrence) => (
        <li key={occurrence.id} class="row">
          <span class="figures">{clockTime(occurrence.at, work.zone)}</span>
          {occurrence.menu !== null && (
            <span>{menuAnswerWords(work.ticket.triage.symptom).said[occurrence.menu]}</span>
          )}
          {occurrence.corrections.length > 0 && (
            <span class="soft">
              {watchesWords().asWas(clockTime(occurrence.corrections[0]?.was ?? '', work.zone))}
            </span>
          )}
          {onOtherTime !== undefined && occurrence.withdrawn === null && work.may('correctOccurrence') && (
            <Button kind="quiet" onClick={() => onOtherTime(occurrence)}>
              {watchesWords().otherTime}
              <span class="for-readers-only"> {clockTime(occurrence.at, work.zone)}</span>
            </Button>
          )}
          {occurrence.withdrawn === null ? (
            work.may('withdrawOccurrence') && (
              <Button kind="quiet" onClick={() => onWithdraw(occurrence)}>
                {t.withdrawOne}
                <span class="for-readers-only"> {clockTime(occurrence.at, work.zone)}</span>
              </Button>
            )
          ) : (
            <span>
              <Badge>{t.withdrawn}</Badge> {typed(occurrence.withdrawn.reason)}
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

/** What a watch is for, as a heading. */
function purposeWords({ chain }: Work, { purpose, menuDeviceId }: Watch): string {
  const t = watchWords();
  if (purpose === 'side')
    return t.purposes.side(placeWords(chain, { kind: 'device', deviceId: menuDeviceId ?? '' }));
  return t.purposes[purpose];
}

/** Time since a moment as a stop-watch shows it: `1:04:09`. */
function elapsed(from: string, now: string): string {
  const seconds = Math.max(0, Math.floor((Date.parse(now) - Date.parse(from)) / 1000));
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (value: number) => String(value).padStart(2, '0');
  return h === 0 ? `${m}:${two(s)}` : `${h}:${two(m)}:${two(s)}`;
}
