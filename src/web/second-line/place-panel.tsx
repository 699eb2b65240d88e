import { modeName } from '../../../shared/chain/signal-mode.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import { testKey } from '../../../shared/isolation/test-record.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Facts } from '../parts/card.tsx';
import { belongsTo } from '../place/belongs-to.ts';
import { deviceWord, placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { changeWords } from '../words/change-words.ts';
import { frameWords } from '../words/frame.ts';
import { percent } from '../words/percent.ts';
import { inWords, said } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { FindingList } from './checks-part.tsx';
import { EvidenceList, itemsAt } from './evidence-part.tsx';
import { pickedStep } from './picked-step.ts';
import { caseWords } from './words.ts';

/** All that is known of one device or cable, under the drawing it was chosen in. */
export function PlacePanel({
  facts,
  place,
  onClose,
}: {
  facts: CaseFacts;
  place: Place;
  onClose: () => void;
}) {
  const t = caseWords();
  const { chain, ticket, isOurs } = facts;
  const audit = useDocument(
    isOurs ? paths.chainAudit(ticket.chainId, ticket.triage.symptom.kind) : null,
  ).body;
  const budget = useDocument(isOurs ? paths.chainBudget(ticket.chainId) : null).body?.budget;
  const suspects = useDocument(isOurs ? paths.plan(ticket.id) : null).body?.suspects ?? [];
  const suspect = suspects.find((each) => each.place !== null && belongsTo(each.place, place));
  const findings = (audit?.findings ?? []).filter((finding) => belongsTo(finding.place, place));
  const link =
    place.kind === 'link' ? budget?.links.find(({ linkIds }) => linkIds.includes(place.linkId)) : null;
  const items = itemsAt(facts, place);
  return (
    <div class="case-place" role="status">
      <h4>{placeWord(chain, place)}</h4>
      <PlaceFacts facts={facts} place={place} />
      {suspect !== undefined && (
        <p>
          {t.suspectAt(percent(suspect.probability))}{' '}
          {suspect.modes[0] !== undefined && `${t.likeliestMode}: ${said(suspect.modes[0].name).text}.`}
        </p>
      )}
      {(link?.wanted ?? []).map(({ sentence }) => (
        <p key={messageKey(sentence)}>{inWords(sentence)}</p>
      ))}
      {findings.length > 0 && <FindingList findings={findings} />}
      {items.length > 0 && <EvidenceList facts={facts} items={items} />}
      {ticket.allowedNow.some(({ type }) => type === 'directStep') && (
        <StepsHere facts={facts} place={place} />
      )}
      <div class="not-printed">
        <Button onClick={onClose}>{frameWords().close}</Button>
      </div>
    </div>
  );
}

/** The steps that can be made here; one that is tapped goes into the form that directs it. */
function StepsHere({ facts: { ticket }, place }: { facts: CaseFacts; place: Place }) {
  const t = caseWords();
  const changes = useDocument(paths.applicableChanges(ticket.id)).body?.items ?? [];
  const here = changes.filter(({ target }) => belongsTo(target, place));
  if (here.length === 0) return null;
  return (
    <div class="stack not-printed">
      <h5>{t.directHere}</h5>
      <div class="row">
        {here.map((each) => {
          const key = testKey(each.kind, each.target, each.own);
          return (
            <Button key={key} onClick={() => (pickedStep.value = { ticketId: ticket.id, key })}>
              {each.tried ? `${changeWords(each)} (${t.triedBefore})` : changeWords(each)}
            </Button>
          );
        })}
      </div>
    </div>
  );
}

function PlaceFacts({ facts: { chain }, place }: { facts: CaseFacts; place: Place }) {
  const t = caseWords();
  if (place.kind === 'device') {
    const device = chain.devices.find(({ id }) => id === place.deviceId);
    if (device === undefined) return null;
    return (
      <Facts
        facts={[
          [t.role, terms().role[device.role]],
          [t.model, device.model],
          [t.serial, device.serial],
          [t.firmware, device.firmware ?? t.notKnown],
          [t.ports, device.ports.map((port) => `${port.label}: ${modeName(port.highestMode)}`).join('; ')],
          [
            t.settings,
            Object.entries(device.settings)
              .map(([key, value]) => `${key}: ${value}`)
              .join('; '),
          ],
          [t.notes, device.notes],
        ]}
      />
    );
  }
  const link = place.kind === 'link' ? chain.links.find(({ id }) => id === place.linkId) : undefined;
  if (link === undefined) return null;
  return (
    <Facts
      facts={[
        [t.length, `${number(link.lengthM, 1)} m`],
        [t.construction, terms().construction[link.construction]],
        [t.category, `${terms().category[link.category]}, ${link.certified ? t.certified : t.notCertified}`],
        [t.route, t.routes[link.route]],
        [t.from, deviceWord(chain, link.from.deviceId)],
        [t.to, deviceWord(chain, link.to.deviceId)],
        [t.installedOn, link.installedOn],
        [t.notes, link.notes],
      ]}
    />
  );
}
