import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { ChangeRecord } from '../../../../shared/contract/triage.ts';
import { changesOfRound, occurrencesIn, watchesFor } from '../../../../state-machines/triage/record.ts';
import { whyNoProof } from '../../../../state-machines/triage/rules/culprit.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Choices, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Screen } from '../../parts/screen.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { changeWords } from '../../words/change-words.ts';
import { percent } from '../../words/percent.ts';
import { placeWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { TicketPage } from './page.tsx';
import { Question } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { usePlan } from './use-plan.ts';
import { watchWords } from './watch-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** Naming what a retest has shown. */
export function CulpritScreen({ ticketId = '' }: { ticketId?: string }) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <>
          <Culprit work={work} />
          <QuestionPhoto work={work} />
        </>
      )}
    </TicketPage>
  );
}

function Culprit({ work }: { work: Work }) {
  const shown = changesOfRound(work.ticket.triage).findLast((change) => whyNoProof(change) === null);
  if (shown !== undefined && work.may('nameCulprit')) return <CulpritForm work={work} shown={shown} />;
  return (
    <Screen title={caseWords().culpritTitle}>
      <Notice>{caseWords().noProof}</Notice>
      <div>
        <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
      </div>
    </Screen>
  );
}

/** Places that may be named: those that are suspected most, and the one that the change was made to. */
function placesFor(
  work: Work,
  shown: ChangeRecord,
  suspects: readonly { place: Place | null; probability: number }[],
) {
  const likely = suspects.filter(({ probability }) => probability >= 0.02).slice(0, 4);
  const chances = new Map(
    likely.flatMap(({ place, probability }) =>
      place === null ? [] : [[placeKey(place), probability] as const],
    ),
  );
  const places = [...likely.flatMap(({ place }) => (place === null ? [] : [place])), shown.target];
  const distinct = new Map(places.map((place) => [placeKey(place), place]));
  return [...distinct].map(([key, place]) => {
    const chance = chances.get(key);
    const words = placeWords(work.chain, place);
    return { key, place, label: chance === undefined ? words : `${words} (${percent(chance)})` };
  });
}

function CulpritForm({ work, shown }: { work: Work; shown: ChangeRecord }) {
  const t = caseWords();
  const { route } = useLocation();
  const { plan } = usePlan(work);
  const places = placesFor(work, shown, plan?.suspects ?? []);
  const confirms = watchesFor(work.ticket.triage, 'confirm').filter(({ changeId }) => changeId === shown.id);
  const returned = confirms.findLast((watch) => occurrencesIn([watch]).length > 0);
  const change = `${changeWords(shown)}, ${placeWords(work.chain, shown.target)}`;
  const [draft, write, forget] = useDraftForm(`culprit ${work.ticket.id}`, {
    place: null as string | null,
    explanation: t.explained(change),
    why: '',
  });
  const [isLacking, setLacking] = useState(false);
  const chosen = places.find(({ key }) => key === draft.place) ?? places[0];
  const isFull = isReason(draft.explanation) && (returned !== undefined || isReason(draft.why));
  const name = async () => {
    setLacking(!isFull);
    if (!isFull || chosen === undefined) return;
    const confirmation =
      returned === undefined
        ? { kind: 'notDone' as const, reason: draft.why.trim() }
        : { kind: 'returned' as const, watchId: returned.id };
    const { place } = chosen;
    const explanation = draft.explanation.trim();
    if (await work.send({ type: 'nameCulprit', changeId: shown.id, place, explanation, confirmation })) {
      await forget();
      route(triageAddress(work.ticket.id), true);
    }
  };
  return (
    <Question
      work={work}
      title={t.culpritTitle}
      answers={
        <>
          <Button kind="primary" large onClick={() => void name()}>
            {t.name}
          </Button>
          <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
        </>
      }
    >
      <p>
        <span class="soft">{t.shownBy}:</span> {change}
      </p>
      <Choices
        label={t.where}
        value={chosen?.key ?? null}
        onChoose={(place) => write({ place })}
        options={places.map(({ key, label }) => ({ value: key, label }))}
      />
      <TextField
        label={t.explanation}
        value={draft.explanation}
        maxLength={longest.reason}
        onInput={({ currentTarget }) => write({ explanation: currentTarget.value })}
      />
      {returned === undefined ? (
        <TextField
          label={t.notReturned}
          value={draft.why}
          maxLength={longest.reason}
          onInput={({ currentTarget }) => write({ why: currentTarget.value })}
        />
      ) : (
        <Notice tone="good">{t.returned(watchWords().seen(occurrencesIn([returned]).length))}</Notice>
      )}
      {isLacking && !isFull && (
        <Notice tone="caution" announce>
          {t.needsAll}
        </Notice>
      )}
    </Question>
  );
}
