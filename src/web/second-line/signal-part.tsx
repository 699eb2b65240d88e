import type { ComponentChild } from 'preact';
import { formatName } from '../../../shared/chain/signal-mode.ts';
import type { BudgetReply, EdidReadings } from '../../../shared/contract/signal.ts';
import { distinctMessages, type Message, messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { OpenEdidBench } from '../edids/lazy-bench.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { deviceWord, placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { Table } from './table.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

const tones = {
  fits: 'good',
  doubtful: 'caution',
  reduced: 'caution',
  notOffered: 'refusal',
  short: 'refusal',
} as const;

/** What an EDID says of a topic; a dash where it says nothing. */
const itemsOf = (items: readonly Message[]): ComponentChild =>
  items.length === 0 ? '–' : items.map((item, at) => [at > 0 && ', ', inWords(item)]);

/** The tightest first; what can't be reckoned before everything. */
const leftOver = (figures: { headroomFraction: number | null } | null): number =>
  figures?.headroomFraction ?? Number.NEGATIVE_INFINITY;

const headroomWord = (figures: { headroomFraction: number | null } | null): string =>
  figures === null || figures.headroomFraction === null
    ? '–'
    : `${number(figures.headroomFraction * 100, 0)} %`;

/** What each cable has to carry for what the client wants, what it can, and what is left. */
export function BudgetPart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const { ticket, chain } = facts;
  const version = ticket.triage.asFound?.chainVersion;
  const budget = useDocument(paths.chainBudget(ticket.chainId, version === undefined ? {} : { version }));
  return (
    <CasePart id="budget" title={t.budget} isFolded digest={<BudgetDigest body={budget.body} />}>
      <DocumentView document={budget}>
        {(body) => (
          <>
            <p class="soft">{t.budgetOf(body.version)}</p>
            <Overall body={body} />
            <Table
              caption={t.budget}
              heads={[t.cable, t.wanted, t.verdict, t.needs, t.carries, t.left, t.narrowest, t.inWords]}
              figures={[3, 4, 5]}
              rows={body.budget.links
                .flatMap(({ cableLinkId, wanted }) => wanted.map((each) => ({ cableLinkId, ...each })))
                .toSorted((a, b) => leftOver(a.figures) - leftOver(b.figures))
                .map(({ cableLinkId, wanted: format, verdict, figures, sentence }) => [
                  placeWord(chain, { kind: 'link', linkId: cableLinkId }),
                  formatName(format),
                  <Badge key="verdict" tone={tones[verdict]}>
                    {values().fits[verdict]}
                  </Badge>,
                  figures === null ? '–' : `${number(figures.needGbps, 2)} Gbit/s`,
                  figures === null ? '–' : `${number(figures.capacityGbps, 2)} Gbit/s`,
                  headroomWord(figures),
                  figures === null ? '' : t.elements[figures.narrowest],
                  inWords(sentence),
                ])}
            />
            <Others body={body} />
          </>
        )}
      </DocumentView>
    </CasePart>
  );
}

/** How many of the cables' formats are not carried, by how; that all fit, where they do. */
function BudgetDigest({ body }: { body: BudgetReply | null }) {
  if (body === null) return null;
  const verdicts = body.budget.links.flatMap(({ wanted }) => wanted.map(({ verdict }) => verdict));
  const kinds = (['short', 'notOffered', 'reduced', 'doubtful'] as const).filter((kind) =>
    verdicts.includes(kind),
  );
  if (kinds.length === 0) return <Badge tone="good">{values().fits.fits}</Badge>;
  return kinds.map((kind) => (
    <Badge key={kind} tone={tones[kind]}>
      {number(verdicts.filter((verdict) => verdict === kind).length)} {values().fits[kind]}
    </Badge>
  ));
}

const Overall = ({ body }: { body: BudgetReply }) => (
  <ul>
    {body.budget.wanted.map(({ wanted, verdict, sentence }) => (
      <li key={formatName(wanted)}>
        <Badge tone={tones[verdict]}>{values().fits[verdict]}</Badge> {inWords(sentence)}
      </li>
    ))}
  </ul>
);

/** Content protection and the 5 V line: only what is not in order. */
function Others({ body: { contentProtection, power } }: { body: BudgetReply }) {
  const t = caseWords();
  const faults = [
    ...contentProtection.hops.filter(({ allowed }) => allowed !== 'yes').map(({ sentence }) => sentence),
    ...contentProtection.topology.filter(({ within }) => !within).map(({ sentence }) => sentence),
    ...power.filter(({ verdict }) => verdict !== 'enough').map(({ sentence }) => sentence),
  ];
  return (
    <>
      <h3>{t.protectionAndPower}</h3>
      {faults.length === 0 ? (
        <p>{t.nothingToSay}</p>
      ) : (
        <ul>
          {distinctMessages(faults).map((sentence) => (
            <li key={messageKey(sentence)}>{inWords(sentence)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Every EDID that was read, and where two of them differ. */
export function EdidPart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const edids = useDocument(paths.chainEdids(facts.ticket.chainId));
  return (
    <CasePart id="edids" title={t.edids} isFolded digest={<EdidDigest body={edids.body} />}>
      <DocumentView document={edids}>
        {(body) => (body.readings.length === 0 ? <p>{t.noEdids}</p> : <Edids facts={facts} edids={body} />)}
      </DocumentView>
      <OpenEdidBench ticketId={facts.ticket.id} />
    </CasePart>
  );
}

/** How many EDIDs there are, and whether any two that should be alike differ. */
function EdidDigest({ body }: { body: EdidReadings | null }) {
  const t = caseWords();
  if (body === null) return null;
  const apart = body.comparisons.filter(({ same, differences }) => !same && differences.length > 0).length;
  return (
    <>
      <Badge>{number(body.readings.length)}</Badge>
      {apart > 0 && <Badge tone="caution">{t.pairsDiffer(apart)}</Badge>}
    </>
  );
}

function Edids({
  facts: { chain, zone },
  edids: { readings, comparisons },
}: {
  facts: CaseFacts;
  edids: EdidReadings;
}) {
  const t = caseWords();
  const nameOf = (at: number): string => {
    const reading = readings[at];
    if (reading === undefined) return '';
    const place =
      reading.portId === null
        ? deviceWord(chain, reading.deviceId)
        : placeWord(chain, { kind: 'port', deviceId: reading.deviceId, portId: reading.portId });
    const when = reading.from.kind === 'record' ? t.fromDescription : dayAndTime(reading.from.at, zone);
    return `${place} (${when})`;
  };
  return (
    <>
      <Table
        caption={t.edids}
        heads={[t.number, t.where, t.saysDisplay, t.sha256]}
        rows={readings.map(({ display, sha256 }, at) => [
          at + 1,
          nameOf(at),
          display,
          <span key="hash" class="figures">
            {sha256.slice(0, 12)}…
          </span>,
        ])}
      />
      {comparisons.map(({ first, second, perspective, same, differences }) => (
        <div key={`${first} ${second} ${perspective}`} class="stack">
          <h3>{t.edidPair(first + 1, second + 1, t.perspectives[perspective])}</h3>
          {same || differences.length === 0 ? (
            <p>
              <Badge tone="good">{t.edidSame}</Badge>
            </p>
          ) : (
            <Table
              caption={t.edidPair(first + 1, second + 1, t.perspectives[perspective])}
              heads={[t.topic, t.change, nameOf(first), nameOf(second)]}
              rows={differences.map((difference) => [
                terms().edidTopic[difference.topic],
                t.edidChanges[difference.change],
                itemsOf(difference.first),
                itemsOf(difference.second),
              ])}
            />
          )}
        </div>
      ))}
    </>
  );
}
