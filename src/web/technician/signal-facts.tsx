import type { Place } from '../../../shared/contract/chain.ts';
import type { BudgetReply, EdidReadings } from '../../../shared/contract/signal.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import { distinctMessages, messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { Badge, type Tone } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { number } from '../words/times.ts';
import { signalWords } from './signal-words.ts';

type LinkBudget = BudgetReply['budget']['links'][number];
const verdictTones: Record<LinkBudget['wanted'][number]['verdict'], Tone> = {
  fits: 'good',
  doubtful: 'caution',
  reduced: 'caution',
  notOffered: 'caution',
  short: 'refusal',
};

/** What the computation says of a place: link budget, content protection, 5 V line. */
export function SignalFacts({ chain, place }: { chain: ChainDocument; place: Place }) {
  const t = signalWords();
  const { body: signal, isLoading } = useDocument(paths.chainBudget(chain.id));
  if (signal === null) return <p class="soft">{isLoading ? `${t.reading} …` : t.notHere}</p>;
  const linkIds = linksAt(chain, place);
  const links = signal.budget.links.filter((link) => link.linkIds.some((id) => linkIds.includes(id)));
  const { hops, displays, topology } = signal.contentProtection;
  const deviceId = place.kind === 'device' ? place.deviceId : null;
  const protection = [
    ...hops.filter(({ linkId }) => linkIds.includes(linkId)),
    ...displays.filter(({ displayId }) => displayId === deviceId),
    ...topology.filter(({ linkId, within }) => !within && linkIds.includes(linkId)),
  ];
  const power = signal.power.filter(({ linkId }) => linkIds.includes(linkId));
  return (
    <div class="stack">
      <h3>{t.budget}</h3>
      {links.length === 0 && <p>{t.noBudget}</p>}
      {links.map((link) => (
        <Budget key={link.id} link={link} isNamed={place.kind !== 'link'} />
      ))}
      <h3>{t.protection}</h3>
      {protection.length === 0 && <p>{t.nothing}</p>}
      <ul>
        {distinctMessages(protection.map(({ sentence }) => sentence)).map((sentence) => (
          <li key={messageKey(sentence)}>{inWords(sentence)}</li>
        ))}
      </ul>
      <h3>{t.power}</h3>
      {power.length === 0 && <p>{t.nothing}</p>}
      <ul>
        {power.map(({ linkId, sentence, verdict }) => (
          <li key={linkId}>
            {inWords(sentence)}{' '}
            {verdict !== 'enough' && <Badge tone="caution">{t.powerVerdicts[verdict]}</Badge>}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Budget({ link, isNamed }: { link: LinkBudget; isNamed: boolean }) {
  const t = signalWords();
  return (
    <div class="stack">
      {isNamed && <strong>{inWords(link.name)}</strong>}
      <ul class="verdicts">
        {link.wanted.map(({ wanted, verdict, sentence, figures }) => (
          <li key={JSON.stringify(wanted)}>
            <Badge tone={verdictTones[verdict]}>{t.verdicts[verdict]}</Badge> <span>{inWords(sentence)}</span>
            {figures !== null && (
              <span class="soft figures">
                {' '}
                {t.figures(number(figures.needGbps, 2), number(figures.capacityGbps, 2))}
              </span>
            )}
          </li>
        ))}
      </ul>
      {link.elements.some(({ doubts }) => doubts.length > 0) && (
        <>
          <span>{t.doubts}</span>
          <ul>
            {distinctMessages(link.elements.flatMap(({ doubts }) => doubts)).map((doubt) => (
              <li key={messageKey(doubt)}>{inWords(doubt)}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** The cables that are at a place: itself, or those plugged into a device. */
function linksAt({ chain }: ChainDocument, place: Place): string[] {
  if (place.kind === 'link') return [place.linkId];
  if (place.kind === 'chain') return chain.links.map(({ id }) => id);
  return chain.links
    .filter(({ from, to }) => from.deviceId === place.deviceId || to.deviceId === place.deviceId)
    .map(({ id }) => id);
}

/** The EDIDs that were read at a device, and what differs between them. */
export function Edids({ chain, deviceId }: { chain: ChainDocument; deviceId: string }) {
  const t = signalWords();
  const edids = useDocument(paths.chainEdids(chain.id)).body;
  if (edids === null) return <p class="soft">{t.notHere}</p>;
  const here = edids.readings.flatMap((reading, at) =>
    reading.deviceId === deviceId ? [{ reading, at }] : [],
  );
  if (here.length === 0) return <p>{t.noEdid}</p>;
  const indexes = new Set(here.map(({ at }) => at));
  const comparisons = edids.comparisons.filter(
    ({ first, second }) => indexes.has(first) || indexes.has(second),
  );
  return (
    <div class="stack">
      <ul>
        {here.map(({ reading, at }) => (
          <li key={at}>
            {portLabel(chain, reading)} <strong>{reading.display}</strong>{' '}
            <span class="soft">{reading.from.kind === 'record' ? t.fromRecord : t.fromEvidence}</span>
          </li>
        ))}
      </ul>
      {comparisons.map((comparison) => (
        <Comparison key={`${comparison.first} ${comparison.second}`} comparison={comparison} />
      ))}
    </div>
  );
}

function Comparison({ comparison }: { comparison: EdidReadings['comparisons'][number] }) {
  const t = signalWords();
  if (comparison.same) return <p>{t.sameEdid[comparison.perspective]}</p>;
  return (
    <div>
      <span>{t.differs[comparison.perspective]}</span>
      <ul>
        {comparison.differences.map(({ text }) => (
          <li key={messageKey(text)}>{inWords(text)}</li>
        ))}
      </ul>
    </div>
  );
}

const portLabel = ({ chain }: ChainDocument, reading: EdidReadings['readings'][number]): string =>
  chain.devices.find(({ id }) => id === reading.deviceId)?.ports.find(({ id }) => id === reading.portId)
    ?.label ?? '';
