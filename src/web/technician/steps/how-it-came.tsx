import type { Offer, PlanReply } from '../../../../shared/contract/plan.ts';
import { filledIn } from '../../../../state-machines/triage/plan/fill-in.ts';
import { Button } from '../../parts/button.tsx';
import { SelectField } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { said } from '../../words/sentence.tsx';
import { offerWords } from './offer-words.ts';
import type { Work } from './work.ts';

const saysHowItCame = ({ steps }: Offer): boolean => steps.at(-1)?.type === 'amendIntake';

/** The answers to what made it come, where the plan has several; one alone is a way on like any other. */
export function waysItCame({ offers }: PlanReply): readonly Offer[] {
  const ways = offers.filter(saysHowItCame);
  return ways.length > 1 ? ways : [];
}

/** What made it come, as one question: whoever didn't see it goes on without an answer. */
export function HowItCame({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = offerWords();
  const [written, write, clear] = useDraftForm(`how it came ${work.ticket.id}`, { chosen: '' });
  const ways = waysItCame(plan);
  if (ways.length === 0) return null;
  const way = ways.find(({ key }) => key === written.chosen);
  const options = ways.map(({ key, text }) => ({ value: key, label: said(text).text }));
  return (
    <div class="stack">
      <SelectField
        label={t.whatMadeItCome}
        options={[{ value: '', label: t.notSeen }, ...options]}
        value={way?.key ?? ''}
        onChoose={(chosen) => write({ chosen })}
      />
      {way !== undefined && (
        <Button
          onClick={async () => {
            if (await work.sendInOrder(filledIn(way, {}))) clear();
          }}
        >
          {t.sayHowItCame}
        </Button>
      )}
    </div>
  );
}
