import type { ChangeRecord } from '../../../../shared/contract/change.ts';
import { openChange } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { typed } from '../../parts/typed.tsx';
import { StartWatch } from './start-watch.tsx';
import { stepWords } from './step-words.ts';
import type { PlanHere } from './use-plan.ts';
import { type Work, watchFromNow } from './work.ts';

/** What a screen of the one open change is about. */
export type AtChange = { work: Work; planned: PlanHere; change: ChangeRecord };

/** What a technician said of the change. */
export function Described({ change: { detail } }: { change: ChangeRecord }) {
  return detail === '' ? null : (
    <p>
      <span class="soft">{stepWords().changed}:</span> {typed(detail)}
    </p>
  );
}

/** What was expected of the change, and the settings that it was to change. */
export function Expected({ change }: { change: ChangeRecord }) {
  return (
    <p>
      <span class="soft">{stepWords().expectedWas}:</span> {typed(change.expected)}
      {change.settings.length > 0 && (
        <>
          {' '}
          {change.settings.map(({ key, to }) => (
            <span key={key} class="setting">
              {key} → {String(to)}
            </span>
          ))}
        </>
      )}
    </p>
  );
}

const restore = { type: 'restoreChange', note: '' } as const;
const isCleared = ({ ticket }: Work): boolean => openChange(ticket.triage)?.judgement?.verdict === 'cleared';

/** The ways to end a change: leaving it, where it may stay, and putting it back. */
export function PutBack({ work, isNext = false }: { work: Work; isNext?: boolean }) {
  const t = stepWords();
  const ways = [true, false]
    .map((oneOfTwo) => ({ type: 'keepChange', note: '', oneOfTwo }) as const)
    .filter((keep) => work.refusalOf(keep) === null);
  // What cleared the fault is proven by its return: the same tap begins that watch.
  const mayWatch =
    isNext && ways.length === 0 && isCleared(work) && work.takes([restore, watchFromNow(work, null)]);
  return (
    <>
      {ways.map((keep, at) => (
        <Button
          key={String(keep.oneOfTwo)}
          kind={isNext && at === 0 ? 'primary' : 'plain'}
          large={isNext}
          onClick={() => void work.send(keep)}
        >
          {keep.oneOfTwo ? t.staysAsOneOfTwo : t.stays}
        </Button>
      ))}
      {mayWatch && <StartWatch work={work} watchMin={null} first={[restore]} label={t.backAndWatch} />}
      {work.may('restoreChange') && (
        <Button
          kind={isNext && ways.length === 0 && !mayWatch ? 'primary' : 'plain'}
          large={isNext}
          onClick={() => void work.send(restore)}
        >
          {t.back}
        </Button>
      )}
    </>
  );
}
