import { displaysOf } from '../../../../shared/chain/graph.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { onlyWithSaid, patternSaid } from '../../../../shared/isolation/index.ts';
import { distinctMessages } from '../../../../shared/message/index.ts';
import { perhapsTwoFaults } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { leading } from './at-fault.ts';
import { changesInPlace, changesInShort } from './changes.ts';
import { chainOf, facts, placeWords, signature } from './parts.ts';
import { remedyWords } from './remedy.ts';
import { reportedWords } from './reports.ts';
import { sideWords } from './side.ts';
import { inWords, spoken, termOf, wordsOf } from './tongue.ts';
import { baselineWords } from './watches.ts';
import { joined, moment, nameOf } from './words.ts';

/** Title, the question asked, and the case in a dozen lines. */
export function opening(file: CaseFile): Html {
  const t = wordsOf(file).opening;
  const { packet, ticket, triage } = file;
  const symptom = spoken(file, (say) => say.term('symptom', triage.symptom.kind));
  return html`<header>
      <p class="quiet">${file.organisation.name} · ${t.packet(packet.version)}</p>
      <h1>${t.heading(ticket.number, symptom)}</h1>
      <p class="quiet">${file.site.client} · ${t.made(moment(packet.createdAt), nameOf(file, packet.createdBy))} · ${t.allTimesUtc}</p>
    </header>
    ${leading(file)}
    ${news(file)}${inShort(file)}${safety(file)}`;
}

function news(file: CaseFile): Html | null {
  const t = wordsOf(file).opening;
  const { version } = file.packet;
  if (version === 1) return null;
  return section(
    'news',
    t.newSince(version - 1),
    list(file.news.map((one) => inWords(file, one))) ?? none(t.nothingNew),
  );
}

function inShort(file: CaseFile): Html {
  const { opening: t, standing, changes } = wordsOf(file);
  const { culprit, remedy } = file.triage;
  const inPlace = changesInPlace(file);
  const twoFaults = perhapsTwoFaults(file.triage, chainOf(file));
  return section(
    'in-short',
    t.inShort,
    facts([
      [t.clientSees, clientSees(file)],
      [t.howItComes, howItComes(file)],
      [t.reproduced, baselineWords(file)],
      [t.reported, reportedWords(file)],
      [t.side, sideWords(file)],
      [t.earlierRounds, earlierRoundsWords(file)],
      [changes.oneOfTwo, twoFaults === null ? null : inWords(file, twoFaults.text)],
      [t.changesTried, changesInShort(file)],
      [
        t.inPlaceNow,
        inPlace.length === 0 ? t.asFoundOnly : html`<span class="word warn">${inPlace.join(' ')}</span>`,
      ],
      [
        standing.culprit,
        culprit === null ? null : `${placeWords(file, culprit.place)}. ${culprit.explanation}`,
      ],
      [standing.remedy, remedy === null ? null : remedyWords(file, remedy)],
      [t.leftOut, file.packet.waivers.map(({ item }) => termOf(file, 'completenessItem', item)).join(', ')],
    ]),
  );
}

/** Said once: wherever else an earlier round is named, it is only named. */
function earlierRoundsWords(file: CaseFile): string | null {
  const { earlierRoundsCount: weight } = file;
  if (weight === null) return null;
  return wordsOf(file).opening.earlierRoundsCount(
    file.triage.round,
    spoken(file, (say) => say.percent(weight)),
  );
}

function clientSees(file: CaseFile): string {
  const t = wordsOf(file).opening;
  const { perHour, lastsS, kind } = file.triage.symptom;
  const number = (value: number) => spoken(file, (say) => say.number(value));
  return joined(
    [
      termOf(file, 'symptom', kind),
      perHour === null ? '' : t.perHour(number(perHour)),
      lastsS === null ? '' : t.lasts(number(lastsS)),
      file.intake.since === '' ? '' : t.since(file.intake.since),
    ],
    ', ',
  );
}

/** How the fault comes, and what it shows with and not without. */
function howItComes(file: CaseFile): string {
  const { pattern, onlyWith } = file.triage.symptom;
  return joined(
    [patternSaid(pattern), ...(onlyWith === null ? [] : [onlyWithSaid(onlyWith)])].map((one) =>
      inWords(file, one),
    ),
    '. ',
  );
}

/** Where work can hurt someone, before anything that asks for work. */
function safety(file: CaseFile): Html {
  const t = wordsOf(file).safety;
  const hazards = file.site.hazards.map(({ kind, text }) =>
    joined([termOf(file, 'hazard', kind), text], ': '),
  );
  // Findings share cautions; each is said once.
  const cautions = distinctMessages(file.prerequisites.findings.flatMap((finding) => finding.cautions)).map(
    (caution) => inWords(file, caution),
  );
  return html`<section id="safety"><h2>${t.title}</h2><div class="box warn">
    ${list([...new Set([...hazards, ...cautions])]) ?? html`<p>${t.noHazard}</p>`}
    <p>${t.always}</p>
  </div></section>`;
}

/** What was told on the telephone, and what changed before the fault. */
export function clientSection(file: CaseFile): Html {
  const { client: t, yes, notKnown, note } = wordsOf(file);
  const { intake, triage } = file;
  const named = (ids: readonly string[]) =>
    ids.map((deviceId) => placeWords(file, { kind: 'device', deviceId })).join(', ');
  const displays = displaysOf(chainOf(file)).map(({ id }) => id);
  const isTold = intake.affectedDisplays.length > 0;
  const worked = intake.workedBefore;
  const answers = triage.whatChanged?.answers ?? intake.whatChanged;
  return section(
    'client',
    t.title,
    facts([
      [t.symptom, clientSees(file)],
      [t.toldBy, intake.reporterRelation],
      [t.howItComes, howItComes(file)],
      [t.sources, named(intake.affectedSources)],
      [t.displays, isTold ? named(intake.affectedDisplays) : notKnown],
      [t.displaysWithout, isTold && named(displays.filter((id) => !intake.affectedDisplays.includes(id)))],
      [t.content, joined([t.contents[intake.content], intake.affectedContent], '. ')],
      [t.workedBefore, worked === null ? notKnown : worked ? yes : t.neverWorked],
      [t.triedOnPhone, intake.triedOnPhone],
      [note, intake.notes],
    ]),
    html`<h3>${t.whatChanged}</h3>`,
    list(
      answers.map(({ kind, text, when }) =>
        joined([termOf(file, 'whatChanged', kind), text, when ?? ''], ', '),
      ),
    ) ?? none(t.notAnswered),
    triage.whatChanged !== null &&
      html`<p class="quiet">${t.askedOnSite(signature(file, triage.whatChanged))}</p>`,
  );
}
