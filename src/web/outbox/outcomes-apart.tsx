import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../shared/contract/limits.ts';
import type { OutcomesApart } from '../../../shared/contract/outcome.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { sendAgain } from '../store/outbox.ts';
import type { CommandEntry } from '../store/outbox-entry.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { Sentence } from '../words/sentence.tsx';
import { outboxWords } from './words.ts';

type Shown = OutcomesApart['shown'];
function toSay(shown: Shown): Message {
  if ('verdict' in shown) return message('retestSays', shown);
  if ('side' in shown) return message('faultLiesOn', shown);
  const count = (severity: string) => shown.findings.filter((each) => each.severity === severity).length;
  return message('auditFound', {
    mustFix: count('mustFix'),
    shouldFix: count('shouldFix'),
    notes: count('note'),
  });
}

/** An outcome as it was on this device, or as the server decides it. */
export const OutcomeSide = ({ shown }: { shown: Shown }) => (
  <strong>
    <Sentence>{toSay(shown)}</Sentence>
  </strong>
);

/** The ways on from an outcome that is another at the server: theirs, or one's own verdict with a reason. */
export function OutcomeWays({ entry, outcomes }: { entry: CommandEntry; outcomes: OutcomesApart }) {
  const t = outboxWords();
  const [{ reason }, write, forget] = useDraftForm(`outcome ${entry.id}`, { reason: '' });
  const [isTooShort, setTooShort] = useState(false);
  const { command } = entry;
  const theirs = { ...command, shown: outcomes.decided } as CommandEntry['command'];
  const mine = outcomes.of === 'judgeRetest' && command.type === 'judgeRetest' ? outcomes.shown : null;
  return (
    <>
      <div class="row">
        <Button kind="primary" onClick={() => void sendAgain({ ...entry, command: theirs })}>
          {t.takeTheirs}
        </Button>
      </div>
      {mine !== null && (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            setTooShort(!isReason(reason));
            if (!isReason(reason)) return;
            const override = { verdict: mine.verdict, reason: reason.trim() };
            void sendAgain({
              ...entry,
              command: { type: 'judgeRetest', override, ...momentOf(command) },
            }).then(forget);
          }}
        >
          <TextField
            label={t.whyMine}
            value={reason}
            error={isTooShort ? t.reasonTooShort : undefined}
            maxLength={longest.reason}
            onInput={({ currentTarget }) => write({ reason: currentTarget.value })}
          />
          <div>
            <Button type="submit">{t.keepMine}</Button>
          </div>
        </form>
      )}
    </>
  );
}

const momentOf = ({ happenedAt }: CommandEntry['command']) =>
  happenedAt === undefined ? {} : { happenedAt };
