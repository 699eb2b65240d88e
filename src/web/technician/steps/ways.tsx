import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { PlanReply } from '../../../../shared/contract/plan.ts';
import type { WayOn } from '../../../../shared/contract/triage.ts';
import { filledIn } from '../../../../state-machines/triage/plan/fill-in.ts';
import { Button } from '../../parts/button.tsx';
import { Field } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { percent } from '../../words/percent.ts';
import { inWords } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';
import { lengthOfTime } from '../../words/times.ts';
import { declareAddress, triageAddress } from '../common/triage-addresses.ts';
import { PlanSentence, Question } from './question.tsx';
import { Suspects } from './tests.tsx';
import { waysWords } from './ways-words.ts';
import type { Work } from './work.ts';

/** What is left to test costs more than it may bring: the ways on, for the client to choose between. */
export function WaysQuestion({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = waysWords();
  const { route } = useLocation();
  const { id } = work.ticket;
  const [draft, write, forget] = useDraftForm(`choice ${id}`, { who: '', what: '' });
  const [isLacking, setLacking] = useState(false);
  const choose = async (way: WayOn['way']) => {
    const offer = offerOf(plan, way);
    const [chosenBy, what] = [draft.who.trim(), draft.what.trim()];
    const lacks = chosenBy === '' || (way === 'replace' && !isReason(what));
    setLacking(lacks);
    if (offer === undefined || lacks) return;
    const commands = filledIn(offer, { chosenBy, what });
    const last = commands.at(-1);
    const isOnScreen = last?.type === 'declareChange' || last?.type === 'escalate';
    if (!(await work.sendInOrder(isOnScreen ? commands.slice(0, -1) : commands))) return;
    await forget();
    if (last?.type === 'declareChange') route(declareAddress(id, last));
    if (last?.type === 'escalate') route(triageAddress(id, 'escalate'));
  };
  return (
    <Question
      work={work}
      title={t.title}
      answers={
        <>
          <Field
            label={t.who}
            value={draft.who}
            maxLength={longest.line}
            error={isLacking ? t.missing : undefined}
            onInput={({ currentTarget }) => write({ who: currentTarget.value })}
          />
          {plan.ways.some(({ way }) => way === 'replace') && (
            <Field
              label={t.what}
              optional
              value={draft.what}
              maxLength={longest.line}
              onInput={({ currentTarget }) => write({ what: currentTarget.value })}
            />
          )}
          {plan.ways.map(({ way }) => (
            <Button key={way} large onClick={() => void choose(way)}>
              {terms().choiceWay[way]}
            </Button>
          ))}
        </>
      }
      beside={<Suspects work={work} plan={plan} />}
    >
      <PlanSentence plan={plan} />
      {plan.ways.map((way) => (
        <Way key={way.way} plan={plan} way={way} />
      ))}
      <Notice tone="caution">{t.unproven}</Notice>
    </Question>
  );
}

const offerOf = ({ offers }: PlanReply, way: WayOn['way']) =>
  offers.find(({ steps: [first] }) => first?.type === 'recordChoice' && 'way' in first && first.way === way);

function Way({ plan, way: { way, minutes, days, sureness } }: { plan: PlanReply; way: WayOn }) {
  const t = waysWords();
  const text = offerOf(plan, way)?.text;
  return (
    <section class="stack">
      <h2>{terms().choiceWay[way]}</h2>
      {text !== undefined && way !== 'handOver' && <p>{inWords(text)}</p>}
      <p>
        {t.work}: {lengthOfTime(minutes)} · {t.until}: {days === 0 ? t.today : t.days(days)} · {t.sureness}:{' '}
        {percent(sureness)}
      </p>
    </section>
  );
}
