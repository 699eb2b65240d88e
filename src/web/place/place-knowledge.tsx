import type { Finding, Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { type Message, messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { Badge, Notice, type Tone } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { PlaceFacts } from './place-facts.tsx';
import { knownWords } from './words.ts';

/** Without a symptom, findings are those of the chain by itself. */
type Properties = { chain: ChainDocument; symptom?: Symptom['kind'] | undefined; place: Place };

/** What is known of a device or cable: its description, what it has to carry, what was found wrong with it. */
export function PlaceKnowledge({ chain, symptom, place }: Properties) {
  const t = knownWords();
  const audit = useDocument(paths.chainAudit(chain.id, symptom)).body;
  const budget = useDocument(place.kind === 'link' ? paths.chainBudget(chain.id) : null).body?.budget;
  const findings = (audit?.findings ?? []).filter((finding) => isAt(finding, place));
  const carried =
    place.kind === 'link' ? budget?.links.find(({ linkIds }) => linkIds.includes(place.linkId)) : undefined;
  return (
    <>
      <PlaceFacts chain={chain.chain} place={place} />
      {carried !== undefined && carried.wanted.length > 0 && (
        <section>
          <h4>{t.budget}</h4>
          {carried.wanted.map(({ sentence }) => (
            <p key={messageKey(sentence)}>{inWords(sentence)}</p>
          ))}
        </section>
      )}
      {findings.length > 0 && <Findings findings={findings} />}
    </>
  );
}

export const tones: Record<Finding['severity'], Tone> = {
  mustFix: 'refusal',
  shouldFix: 'caution',
  note: 'plain',
};

/** Findings with what to do; a caution that several share is said once, before all of them. */
function Findings({ findings }: { findings: readonly Finding[] }) {
  const t = knownWords();
  const cautions = new Map<string, Message>(
    findings.flatMap((finding) => finding.cautions.map((caution) => [messageKey(caution), caution] as const)),
  );
  return (
    <section class="stack">
      <h4>{t.findings}</h4>
      {cautions.size > 0 && (
        <Notice tone="caution">
          {[...cautions].map(([key, caution]) => (
            <span key={key}>{inWords(caution)}</span>
          ))}
        </Notice>
      )}
      <ul class="plain-list">
        {findings.map((finding) => (
          <li key={messageKey(finding.text)}>
            <Badge tone={tones[finding.severity]}>{t.severities[finding.severity]}</Badge>{' '}
            {inWords(finding.text)} {inWords(finding.whatToDo)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Whether a finding is about a device, one of its ports, or a cable. */
export const isAt = ({ place: at }: Finding, place: Place): boolean =>
  (place.kind === 'link' && at.kind === 'link' && at.linkId === place.linkId) ||
  (place.kind === 'device' && (at.kind === 'device' || at.kind === 'port') && at.deviceId === place.deviceId);
