import type { ComponentChildren } from 'preact';
import { findDevice } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { Site } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { Facts } from '../parts/card.tsx';
import { typed, typedInRow, typedText } from '../parts/typed.tsx';
import { placeWord } from '../place/place-words.ts';
import { changeWords } from '../words/change-words.ts';
import { endedWords } from '../words/ended-words.ts';
import { terms } from '../words/terms.ts';
import { day, dayAndTime, number } from '../words/times.ts';
import { culpritOf, proofOf, remedyOf } from './how-it-ended.tsx';
import { reportWords } from './report-words.ts';
import './report.css';

type Told = { ticket: Ticket; chain: Chain; site: Site | null; zone: string };

/** Assumed: as many changes as these are told one by one, so that the report stays on one page. */
const mostTried = 6;

/** One page for the client: what they told, what was found and done, how that is known, and how it goes on. */
export function VisitReport({ ticket, chain, site, zone }: Told) {
  const t = reportWords();
  const { triage } = ticket;
  const proof = proofOf(triage);
  return (
    <article class="report">
      <Facts
        facts={[
          [t.client, typedInRow([ticket.client, site?.address ?? null])],
          [t.ticket, t.number(ticket.number)],
          [t.technician, ticket.assigneeName],
          [t.day, day(triage.closedAt ?? ticket.updatedAt, zone)],
        ]}
      />
      <Part title={t.told}>
        <ToldThen ticket={ticket} />
      </Part>
      <Part title={t.found}>
        <p>{foundIn({ ticket, chain })}</p>
      </Part>
      <Part title={t.did}>
        <Done ticket={ticket} chain={chain} />
      </Part>
      {proof !== null && (
        <Part title={t.known}>
          <p>{proof}</p>
        </Part>
      )}
      <Part title={t.checked}>
        <Checked ticket={ticket} chain={chain} />
      </Part>
      <Part title={t.onward}>
        <Onward ticket={ticket} zone={zone} />
      </Part>
    </article>
  );
}

/** The culprit, or that there is none, and why. */
function foundIn({ ticket: { triage }, chain }: Pick<Told, 'ticket' | 'chain'>): ComponentChildren {
  const t = reportWords();
  if (triage.culprit !== null) return culpritOf({ triage, chain });
  if (triage.remedy?.kind === 'noFaultFound') return remedyOf({ triage, chain });
  return triage.remedy?.kind === 'onSuspicion' ? t.suspected : t.nothingFound;
}

function Part({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function ToldThen({ ticket: { intake, triage } }: { ticket: Ticket }) {
  const t = reportWords();
  const changed = triage.whatChanged?.answers ?? intake.whatChanged;
  return (
    <>
      <p>
        {terms().symptom[triage.symptom.kind]}
        {intake.affectedContent !== '' && <>. {typed(intake.affectedContent)}</>}
      </p>
      {intake.since !== '' && <p>{t.since(typedText(intake.since))}</p>}
      {changed.length > 0 && (
        <p>
          {t.changed(
            changed
              .map(({ kind, text }) => (text === '' ? terms().whatChanged[kind] : typedText(text)))
              .join(', '),
          )}
        </p>
      )}
    </>
  );
}

function Done({ ticket: { triage }, chain }: Pick<Told, 'ticket' | 'chain'>) {
  const t = reportWords();
  const { remedy, asFound, asLeft, changes } = triage;
  const named = asFound?.chain ?? chain;
  const isDone = remedy !== null && remedy.kind !== 'noFaultFound';
  const tried = changes.filter(({ status, diagnostic }) => diagnostic && status === 'restored');
  return (
    <>
      <p>{isDone ? remedyOf({ triage, chain }) : t.nothingDone}</p>
      {asFound !== null && asLeft?.chain !== undefined && (
        <NowAnother from={asFound.chain} to={asLeft.chain} />
      )}
      {tried.length > 0 && (
        <>
          <h3>{t.tried}</h3>
          <ul>
            {tried.slice(-mostTried).map((change) => (
              <li key={change.id}>
                {changeWords(change)}, {placeWord(named, change.target)}:{' '}
                {change.judgement === null ? t.notJudged : endedWords().verdicts[change.judgement.verdict]}
              </li>
            ))}
            {tried.length > mostTried && <li>{t.more(tried.length - mostTried)}</li>}
          </ul>
        </>
      )}
    </>
  );
}

/** The parts that are others now, and what they are: every fact of them would be for experts. */
function NowAnother({ from, to }: { from: Chain; to: Chain }) {
  const differs = <Part extends { id: string }>(parts: readonly Part[], before: readonly Part[]): Part[] =>
    parts.filter(
      (part) => JSON.stringify(part) !== JSON.stringify(before.find(({ id }) => id === part.id) ?? null),
    );
  return (
    <ul>
      {differs(to.links, from.links).map(({ id, construction, lengthM }) => (
        <li key={id}>
          {placeWord(to, { kind: 'link', linkId: id })}: {terms().construction[construction]},{' '}
          {number(lengthM, 1)} m
        </li>
      ))}
      {differs(to.devices, from.devices).map(({ id, name, model }) => (
        <li key={id}>{model === null ? name : `${name}: ${model}`}</li>
      ))}
    </ul>
  );
}

function Checked({ ticket: { triage }, chain }: Pick<Told, 'ticket' | 'chain'>) {
  const t = reportWords();
  const { leavingCheck } = triage;
  if (leavingCheck === null) return <p>{t.notChecked}</p>;
  const named = triage.asLeft?.chain ?? triage.asFound?.chain ?? chain;
  const nameOf = (id: string): string => findDevice(named, id)?.name ?? id;
  const answers = [
    ...leavingCheck.pictures.map(
      ({ sourceId, displayId, answer }) => [t.picture(nameOf(sourceId), nameOf(displayId)), answer] as const,
    ),
    [t.sound, leavingCheck.sound] as const,
    [t.usualStart, leavingCheck.usualStart] as const,
  ];
  return (
    <>
      <ul class="report-checks">
        {answers.map(([what, answer]) => (
          <li key={what}>
            {what}: <strong>{terms().checkAnswer[answer]}</strong>
          </li>
        ))}
      </ul>
      {leavingCheck.note !== '' && <p>{typed(leavingCheck.note)}</p>}
    </>
  );
}

function Onward({ ticket, zone }: Pick<Told, 'ticket' | 'zone'>) {
  const t = reportWords();
  const { triage, number, visitAt, state, updatedAt } = ticket;
  const limits = triage.remedy?.kind === 'workaround' && <p>{typed(triage.remedy.limits)}</p>;
  if (state === 'closed')
    return (
      <>
        {limits}
        <p>{t.closed(number, triage.settings.reopenDays)}</p>
      </>
    );
  const wait = triage.waits.findLast(({ ended }) => ended === null);
  const inPlace = triage.changes.filter(
    ({ status, diagnostic }) => diagnostic && (status === 'applied' || status === 'judged'),
  );
  return (
    <>
      {limits}
      <p>
        {triage.asLeft === null ? t.open : t.repaired}{' '}
        {wait !== undefined && t.waitsFor(typedText(wait.what))}{' '}
        {state.startsWith('escalated') && t.withSpecialists}{' '}
        {visitAt !== null && visitAt > updatedAt && t.nextVisit(dayAndTime(visitAt, zone))}
      </p>
      {inPlace.map((change) => (
        <p key={change.id}>
          {t.inPlace(change.detail === '' ? changeWords(change) : typedText(change.detail))}
        </p>
      ))}
    </>
  );
}
