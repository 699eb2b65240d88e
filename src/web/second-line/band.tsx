import type { Ticket } from '../../../shared/contract/ticket.ts';
import { changesOfRound } from '../../../state-machines/triage/record.ts';
import { whyNoProof } from '../../../state-machines/triage/rules/culprit.ts';
import { paths } from '../api/paths.ts';
import { typed } from '../parts/typed.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { changeWords } from '../words/change-words.ts';
import { wordsOf } from '../words/language.ts';
import { percent } from '../words/percent.ts';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { dayAndTime, lengthOfTime } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { values } from './value-words.ts';

const t = wordsOf({
  en: {
    title: 'The case at a glance',
    suspect: 'Suspected',
    culprit: 'Named as culprit',
    noneYet: 'Nothing yet',
    sure: (chance: string) => `${chance} sure`,
    proof: 'What proves it',
    noProof: 'Nothing yet: no change has cleared it',
    asked: 'What is asked',
    notAsked: 'Nothing: it was never handed on',
    missing: 'What is missing',
    allThere: 'Nothing',
    waits: 'Waiting',
    waitsFor: (length: string, since: string) => `${length}, since ${since}`,
    notWaiting: 'No: it is not with second line',
  },
  de: {
    title: 'Der Fall auf einen Blick',
    suspect: 'Unter Verdacht',
    culprit: 'Als Ursache benannt',
    noneYet: 'Noch nichts',
    sure: (chance) => `zu ${chance} sicher`,
    proof: 'Was es belegt',
    noProof: 'Noch nichts: Keine Änderung hat den Fehler behoben',
    asked: 'Was gefragt ist',
    notAsked: 'Nichts: Der Fall wurde nie weitergegeben',
    missing: 'Was fehlt',
    allThere: 'Nichts',
    waits: 'Wartet',
    waitsFor: (length, since) => `${length}, seit ${since}`,
    notWaiting: 'Nein: Er liegt nicht bei der zweiten Ebene',
  },
});

/** What a case comes down to: the suspect, its proof, the question, what is missing, and how long it waits. */
export function Band({ facts }: { facts: CaseFacts }) {
  const words = t();
  const { ticket } = facts;
  const escalation = ticket.triage.escalations.at(-1);
  const names = [...new Set(ticket.missing.map(({ item }) => terms().completenessItem[item]))];
  return (
    <section class="card case-band" aria-label={words.title}>
      <dl>
        <Suspect facts={facts} />
        <div>
          <dt>{words.proof}</dt>
          <dd>{proofOf(facts)}</dd>
        </div>
        <div>
          <dt>{words.asked}</dt>
          <dd>{escalation === undefined ? words.notAsked : typed(escalation.question)}</dd>
        </div>
        <div>
          <dt>{words.missing}</dt>
          <dd>{names.length === 0 ? words.allThere : names.join(', ')}</dd>
        </div>
        <div>
          <dt>{words.waits}</dt>
          <dd>{waitOf(ticket, facts.zone)}</dd>
        </div>
      </dl>
    </section>
  );
}

function Suspect({ facts: { ticket, chain } }: { facts: CaseFacts }) {
  const words = t();
  const plan = useDocument(paths.plan(ticket.id)).body;
  const { culprit } = ticket.triage;
  const [likeliest] = plan?.suspects ?? [];
  const place = culprit?.place ?? likeliest?.place ?? null;
  const name = place === null ? likeliest && inWords(likeliest.name) : placeWord(chain, place);
  return (
    <div>
      <dt>{culprit === null ? words.suspect : words.culprit}</dt>
      <dd>
        <strong>{name ?? words.noneYet}</strong>
        {culprit === null && likeliest !== undefined && (
          <span class="figures">, {words.sure(percent(likeliest.probability))}</span>
        )}
      </dd>
    </div>
  );
}

/** The change that cleared the fault, as far as a retest can show. */
function proofOf({ ticket, chain }: CaseFacts): string {
  const shown = changesOfRound(ticket.triage).findLast((change) => whyNoProof(change) === null);
  if (shown === undefined) return t().noProof;
  return `${changeWords(shown)}, ${placeWord(chain, shown.target)}: ${values().verdicts.cleared}`;
}

function waitOf({ state, triage }: Ticket, zone: string): string {
  const since = triage.escalations.at(-1)?.at;
  if (!state.startsWith('escalated') || since === undefined) return t().notWaiting;
  const minutes = Math.max(0, (Date.now() - Date.parse(since)) / 60_000);
  return t().waitsFor(lengthOfTime(minutes), dayAndTime(since, zone));
}
