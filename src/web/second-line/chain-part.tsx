import { useMemo, useState } from 'preact/hooks';
import type { Place } from '../../../shared/contract/chain.ts';
import { standingSides } from '../../../state-machines/triage/record.ts';
import { segmentOf } from '../../../state-machines/triage/segment.ts';
import { paths } from '../api/paths.ts';
import { ChainDrawing } from '../drawing/chain-drawing.tsx';
import type { Marks } from '../drawing/marks.ts';
import { planMarks } from '../drawing/plan-marks.ts';
import { useRecordMarks } from '../drawing/use-record-marks.ts';
import { SelectField } from '../parts/field.tsx';
import { LeftAs } from '../place/chain-differences.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { changeWords } from '../words/change-words.ts';
import { dayAndTime } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { PlacePanel } from './place-panel.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

/** The chain as found, the same with a change under test, and all that is known of the place that was chosen. */
export function ChainPart({ facts }: { facts: CaseFacts }) {
  const { ticket, chain, zone, nameOf } = facts;
  const { triage } = ticket;
  const t = caseWords();
  const [selected, setSelected] = useState<Place | null>(null);
  const [changeId, setChangeId] = useState<string | null>(null);
  const plan = useDocument(
    facts.isOurs && ticket.state !== 'closed' && triage.culprit === null ? paths.plan(ticket.id) : null,
  ).body;
  const recorded = useRecordMarks(triage, chain);
  const marks = useMemo(
    () => ({ ...recorded, ...foundMarks(facts), ...planMarks(plan) }),
    [ticket, recorded, plan],
  );
  const changes = triage.changes.filter(({ status }) => status !== 'withdrawn');
  const shown =
    changes.find(({ id }) => id === changeId) ??
    changes.findLast(({ status }) => status === 'declared' || status === 'applied' || status === 'judged') ??
    changes.findLast(({ judgement }) => judgement?.verdict === 'cleared') ??
    changes.at(-1);
  return (
    <CasePart id="chain" title={t.chain}>
      <h3>{triage.asFound === null ? t.asDescribed : t.asFound}</h3>
      {triage.asFound !== null && (
        <p class="soft">
          {t.recordedBy(
            triage.asFound.chainVersion,
            nameOf(triage.asFound.by),
            dayAndTime(triage.asFound.at, zone),
          )}
        </p>
      )}
      <p class="not-printed soft">{t.choosePlace}</p>
      <ChainDrawing chain={chain} marks={marks} selected={selected} onSelect={setSelected} />
      {selected !== null && <PlacePanel facts={facts} place={selected} onClose={() => setSelected(null)} />}
      <LeftAs triage={triage} />
      {shown !== undefined && (
        <details>
          <summary>
            {t.underTest}: {changeWords(shown)}, {placeWord(chain, shown.target)}
          </summary>
          {changes.length > 1 && (
            <div class="not-printed case-choice">
              <SelectField
                label={t.whichChange}
                value={shown.id}
                onChoose={setChangeId}
                options={changes.map((change) => ({
                  value: change.id,
                  label: `${triage.changes.indexOf(change) + 1}. ${changeWords(change)}: ${placeWord(chain, change.target)}`,
                }))}
              />
            </div>
          )}
          <p>
            <strong>
              {changeWords(shown)}: {placeWord(chain, shown.target)}
            </strong>
            {' – '}
            {values().statuses[shown.status]}
            {shown.judgement !== null && `. ${values().verdicts[shown.judgement.verdict]}.`}
          </p>
          <ChainDrawing chain={chain} marks={{ ...marks, change: shown.target }} />
        </details>
      )}
    </CasePart>
  );
}

/** Where the fault can still be by the sides that were proven; once a cause is named, that instead. */
function foundMarks({ ticket: { triage } }: CaseFacts): Marks {
  const isOver = triage.culprit !== null;
  const segment = isOver || standingSides(triage).length === 0 ? null : segmentOf(triage);
  const places: Place[] =
    segment === null
      ? []
      : [
          ...segment.deviceIds.map((deviceId): Place => ({ kind: 'device', deviceId })),
          ...segment.linkIds.map((linkId): Place => ({ kind: 'link', linkId })),
        ];
  const suspects = places.map((place) => ({ place, chance: null }));
  return { suspects, culprit: triage.culprit?.place ?? null };
}
