import { useState } from 'preact/hooks';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import { isReason, longest } from '../../../shared/contract/limits.ts';
import type { Wait } from '../../../shared/contract/triage.ts';
import { actingParties, waitingKinds } from '../../../shared/contract/triage-names.ts';
import { Button } from '../parts/button.tsx';
import { Choices, Field, SelectField, TextField } from '../parts/field.tsx';
import { useDraftForm } from '../store/use-draft.ts';
import { terms } from '../words/terms.ts';
import { dayKey } from '../words/times.ts';
import { endOfDay } from '../words/zone-time.ts';
import { waitingWords } from './words.ts';

type WaitFor = Extract<TicketCommand, { type: 'waitFor' }>;

/** Who mostly has to act for each kind of thing; proposed, and changed with a tap. */
const usualActor = { part: 'supplier', client: 'client', access: 'client', other: 'office' } as const;

/**
 * What a ticket waits for, who has to act, and until when; the same form at the desk and on the phone. A wait is over
 * when its day is: it is overdue from the next one on.
 */
export function WaitForm({
  ticketId,
  zone,
  start = {},
  send,
}: {
  ticketId: string;
  zone: string;
  /** What is known beforehand; `until` in UTC. */
  start?: { kind?: Wait['kind']; until?: string };
  /** Resolves to whether it was done. */
  send: (command: WaitFor) => Promise<boolean>;
}) {
  const t = waitingWords();
  const [draft, write, forget] = useDraftForm(`wait ${ticketId}`, {
    kind: start.kind ?? 'part',
    what: '',
    actor: usualActor[start.kind ?? 'part'] as Wait['actor'],
    actorName: '',
    until: start.until === undefined ? '' : dayKey(start.until, zone),
  });
  const [isLacking, setLacking] = useState(false);
  const submit = async () => {
    const until = endOfDay(draft.until, zone);
    const what = draft.what.trim();
    setLacking(until === null || !isReason(what));
    if (until === null || !isReason(what)) return;
    const { kind, actor } = draft;
    const actorName = draft.actorName.trim() === '' ? null : draft.actorName.trim();
    if (await send({ type: 'waitFor', kind, what, actor, actorName, until })) await forget();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Choices
        label={t.kind}
        value={draft.kind}
        options={waitingKinds.map((value) => ({ value, label: terms().waitingKind[value] }))}
        onChoose={(kind) => write({ kind, actor: usualActor[kind] })}
      />
      <TextField
        label={t.what}
        hint={t.whatHint}
        value={draft.what}
        maxLength={longest.reason}
        error={isLacking ? t.missing : undefined}
        onInput={({ currentTarget }) => write({ what: currentTarget.value })}
      />
      <SelectField
        label={t.actor}
        value={draft.actor}
        options={actingParties.map((value) => ({ value, label: terms().actingParty[value] }))}
        onChoose={(actor) => write({ actor })}
      />
      <Field
        label={t.actorName}
        optional
        value={draft.actorName}
        maxLength={longest.line}
        onInput={({ currentTarget }) => write({ actorName: currentTarget.value })}
      />
      <Field
        label={t.until}
        type="date"
        value={draft.until}
        onInput={({ currentTarget }) => write({ until: currentTarget.value })}
      />
      <Button type="submit" kind="primary" large>
        {t.send}
      </Button>
    </form>
  );
}
