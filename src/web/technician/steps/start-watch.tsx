import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import type { Symptom, WatchConditions } from '../../../../shared/contract/triage.ts';
import { Button } from '../../parts/button.tsx';
import { Choices, Field } from '../../parts/field.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { terms } from '../../words/terms.ts';
import { conditionWords } from './condition-words.ts';
import { watchWords } from './watch-words.ts';
import { type Work, watchFromNow } from './work.ts';

/**
 * Starts a watch in the way in which the fault comes, under the same as it comes. What nobody but the technician knows of
 * that is asked above the button: what plays, and how long the devices have been on.
 */
export function StartWatch({
  work,
  watchMin,
  menuDeviceId = null,
  isNext = true,
  label,
  first = [],
}: {
  work: Work;
  watchMin: number | null;
  menuDeviceId?: string | null;
  isNext?: boolean;
  /** Steps that the same tap does before. */
  first?: readonly TicketCommand[];
  /** Of a watch over time; looks and tries have their own. */
  label?: string;
}) {
  const { triage } = work.ticket;
  const step = watchFromNow(work, watchMin, menuDeviceId);
  const [said, say, forget] = useDraftForm<Partial<WatchConditions>>(
    `watch ${work.ticket.id} ${menuDeviceId ?? ''}`,
    {},
  );
  const conditions = { ...step.conditions, ...said };
  return (
    <>
      <Conditions symptom={triage.symptom} conditions={conditions} onSay={say} />
      <Button
        kind={isNext ? 'primary' : 'plain'}
        large
        onClick={() =>
          void work
            .sendInOrder([...first, { ...step, conditions }])
            .then((isSent) => (isSent ? forget() : undefined))
        }
      >
        {startLabel(step, label)}
      </Button>
    </>
  );
}

function startLabel({ mode, trigger, triggerKind }: ReturnType<typeof watchFromNow>, label?: string) {
  const t = conditionWords();
  if (mode === 'look') return t.lookNow;
  if (mode === 'time') return label ?? watchWords().startTime;
  const named = triggerKind === null || triggerKind === 'other' ? null : terms().patternTrigger[triggerKind];
  return named === null ? (
    <>
      {watchWords().startTrying}
      {trigger !== null && <>: {typed(trigger)}</>}
    </>
  ) : (
    t.startTryingNamed(named)
  );
}

function Conditions({
  symptom: { pattern, onlyWith },
  conditions: { asTold, sincePowerOnMin },
  onSay,
}: {
  symptom: Symptom;
  conditions: WatchConditions;
  onSay: (part: Partial<WatchConditions>) => void;
}) {
  const t = conditionWords();
  return (
    <>
      {onlyWith !== null && (
        <Choices
          label={t.plays}
          options={[
            { value: 'told', label: t.playsTold(terms().onlyWith[onlyWith.kind], onlyWith.what) },
            { value: 'other', label: t.playsOther },
          ]}
          value={asTold === false ? 'other' : 'told'}
          onChoose={(value) => onSay({ asTold: value === 'told' })}
        />
      )}
      {pattern.kind === 'warm' && (
        <Field
          label={t.onFor}
          inputMode="decimal"
          pattern="[0-9]*"
          value={sincePowerOnMin === null ? '' : String(sincePowerOnMin)}
          onInput={({ currentTarget }) => onSay({ sincePowerOnMin: minutesIn(currentTarget.value) })}
        />
      )}
    </>
  );
}

/** As the contract bounds minutes; null for what is no number. */
function minutesIn(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(value) ? null : Math.min(10_080, Math.max(0, value));
}
