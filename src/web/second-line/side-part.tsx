import type { SideObservation } from '../../../shared/contract/triage.ts';
import { minutesOf, occurrencesOf, watchesFor } from '../../../state-machines/triage/record.ts';
import { Badge } from '../parts/notice.tsx';
import { typed } from '../parts/typed.tsx';
import { deviceWord } from '../place/place-words.ts';
import { lengthOfTime } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { LookList } from './look-list.tsx';
import { Table } from './table.tsx';
import { TraceGlance } from './trace-glance.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

/** Which menu was up, how often the fault came under it, and which way the menu answered. */
export function SidePart({ facts: { ticket, chain } }: { facts: CaseFacts }) {
  const t = caseWords();
  const { triage } = ticket;
  const watches = watchesFor(triage, 'side');
  const deviceIds = [
    ...new Set([
      ...triage.sides.map(({ deviceId }) => deviceId),
      ...watches.flatMap(({ menuDeviceId }) => menuDeviceId ?? []),
    ]),
  ];
  const rows = deviceIds.map((deviceId) => {
    const here = watches.filter(({ menuDeviceId }) => menuDeviceId === deviceId);
    const seen = here.flatMap(occurrencesOf);
    const answered = (answer: string) => seen.filter(({ menu }) => menu === answer).length;
    const sides = triage.sides.filter((side) => side.deviceId === deviceId);
    return [
      deviceWord(chain, deviceId),
      lengthOfTime(here.reduce((sum, watch) => sum + minutesOf(watch), 0)),
      seen.length,
      answered('stayed'),
      answered('vanished'),
      sides.length === 0 ? (
        <Badge key="side" tone="caution">
          {t.notConcluded}
        </Badge>
      ) : (
        sides.map((side) => <Side key={side.at} side={side} />)
      ),
    ];
  });
  return (
    <CasePart id="side" title={t.sideProof}>
      <p class="soft">{t.sideRule}</p>
      {rows.length === 0 ? (
        <p>{t.noSide}</p>
      ) : (
        <Table
          caption={t.sideProof}
          heads={[t.menuOf, t.watched, t.timesSeen, t.stayed, t.vanished, t.concluded]}
          figures={[1, 2, 3, 4]}
          rows={rows}
        />
      )}
      <TraceGlance triage={triage} chain={chain} />
      <LookList triage={triage} chain={chain} />
    </CasePart>
  );
}

/** A side as it was concluded; struck through, with why, where it does not count any more. */
function Side({ side: { side, withdrawn, superseded } }: { side: SideObservation }) {
  const t = caseWords();
  const lies = t.faultLies(values().sides[side]);
  return (
    <div>
      {withdrawn !== null ? (
        <>
          <s>{lies}</s> {t.withdrawn}: {typed(withdrawn.reason)}
        </>
      ) : superseded !== null ? (
        <>
          <s>{lies}</s> {t.doesNotCount}: {values().superseded[superseded.because]}
        </>
      ) : (
        <strong>{lies}</strong>
      )}
    </div>
  );
}
