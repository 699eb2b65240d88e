import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { distinctMessages } from '../../../../shared/message/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { changesInPlace, changesInShort } from './changes.ts';
import { facts, inEnglish, placeWords, signature } from './parts.ts';
import { sideWords } from './side.ts';
import { baselineWords } from './watches.ts';
import { hazardWords, itemWords, moment, nameOf, symptomWords, whatChangedWords } from './words.ts';

/** Title, the question asked, and the case in a dozen lines. */
export function opening(file: CaseFile): Html {
  const { packet, ticket, triage } = file;
  const title = `Case ${ticket.number}: ${symptomWords[triage.symptom.kind].toLowerCase()}`;
  return html`<header>
      <p class="quiet">${file.organisation.name} · case packet, version ${packet.version}</p>
      <h1>${title}</h1>
      <p class="quiet">${file.site.client} · made ${moment(packet.createdAt)} by ${nameOf(file, packet.createdBy)} · all times UTC</p>
    </header>
    <div class="box"><p><strong>The question</strong></p><p class="typed">${packet.question}</p></div>
    ${news(file)}${inShort(file)}${safety(file)}`;
}

function news({ packet, news: sentences }: CaseFile): Html | null {
  if (packet.version === 1) return null;
  return section(
    'news',
    `New since version ${packet.version - 1}`,
    list(sentences) ?? none('Nothing but the question.'),
  );
}

function inShort(file: CaseFile): Html {
  const { triage } = file;
  const inPlace = changesInPlace(file);
  return section(
    'in-short',
    'In short',
    facts([
      ['The client sees', clientSees(file)],
      ['Reproduced', baselineWords(file)],
      ['Side', sideWords(file)],
      ['Changes tried', changesInShort(file)],
      [
        'In place now',
        inPlace.length === 0
          ? 'The chain as found; nothing of what was tried.'
          : html`<span class="word warn">${inPlace.join(' ')}</span>`,
      ],
      [
        'Culprit',
        triage.culprit === null
          ? null
          : `${placeWords(file, triage.culprit.place)}. ${triage.culprit.explanation}`,
      ],
      ['Remedy', triage.remedy === null ? null : triage.remedy.what],
      ['Left out', leftOut(file)],
    ]),
  );
}

function clientSees({ triage, intake }: CaseFile): string {
  const { perHour, lastsS, kind } = triage.symptom;
  const how = [
    perHour === null ? '' : `about ${perHour} times an hour`,
    lastsS === null ? '' : `for about ${lastsS} s`,
    intake.since === '' ? '' : `since ${intake.since}`,
  ].filter((part) => part !== '');
  return [symptomWords[kind], ...how].join(', ');
}

const leftOut = ({ packet }: CaseFile): string | null =>
  packet.waivers.length === 0 ? null : packet.waivers.map((waiver) => itemWords[waiver.item]).join(', ');

/** Where work can hurt someone, before anything that asks for work. */
function safety(file: CaseFile): Html {
  const { site, prerequisites } = file;
  const hazards = site.hazards.map(({ kind, text }) =>
    text === '' ? hazardWords[kind] : `${hazardWords[kind]}: ${text}`,
  );
  // Findings share cautions; each is said once.
  const cautions = distinctMessages(prerequisites.findings.flatMap((finding) => finding.cautions)).map(
    inEnglish,
  );
  return html`<section id="safety"><h2>Safety</h2><div class="box warn">
    ${list([...new Set([...hazards, ...cautions])]) ?? html`<p>No hazard is recorded for this site; that does not mean that there is none.</p>`}
    <p>Local codes come first. Mains and work inside racks belong to licensed trades; nobody looks into the end of an
    optical cable or into a projector that is lit; a cable across a floor is secured and taken away again.</p>
  </div></section>`;
}

/** What was told on the telephone, and what changed before the fault. */
export function clientSection(file: CaseFile): Html {
  const { intake, triage } = file;
  const sources = intake.affectedSources.map((deviceId) => placeWords(file, { kind: 'device', deviceId }));
  const worked = intake.workedBefore;
  const answers = triage.whatChanged?.answers ?? intake.whatChanged;
  return section(
    'client',
    'What the client sees',
    facts([
      ['Symptom', clientSees(file)],
      ['Told by', intake.reporterRelation],
      ['Sources affected', sources.join(', ')],
      ['Content', intake.affectedContent],
      ['Worked before', worked === null ? 'not known' : worked ? 'yes' : 'no, never'],
      ['Tried on the telephone', intake.triedOnPhone],
      ['Notes', intake.notes],
    ]),
    html`<h3>What changed before it came</h3>`,
    list(
      answers.map(({ kind, text, when }) =>
        [whatChangedWords[kind], text, when ?? ''].filter((part) => part !== '').join(', '),
      ),
    ) ?? none('Nobody has answered that yet.'),
    triage.whatChanged !== null &&
      html`<p class="quiet">Asked on site: ${signature(file, triage.whatChanged)}</p>`,
  );
}
