import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { readingsAsFound } from '../../../state-machines/triage/looks.ts';
import { standingLooks } from '../../../state-machines/triage/record.ts';
import { type Trace, type TracePoint, traceOf } from '../../../state-machines/triage/trace.ts';
import { Badge } from '../parts/notice.tsx';
import { deviceWord, placeWord } from '../place/place-words.ts';
import { wordsOf } from '../words/language.ts';

const words = wordsOf({
  en: {
    title: 'What the readings come to',
    receives: 'receives',
    sends: 'sends',
    says: { right: 'right', wrong: 'wrong' },
    found: (where: string) => `It goes wrong in ${where}.`,
    noneWrong: 'Nothing that was read is wrong.',
    witness: {
      shows: (one: string, other: string) => `${one} and ${other} agree: both show the fault.`,
      doesNotShow: (one: string, other: string) => `They differ: ${other} shows the fault, ${one} does not.`,
      cannotSay: (one: string, other: string) =>
        `Whether ${one} shows it as ${other} does, nobody could say.`,
    },
  },
  de: {
    title: 'Was die Ablesungen ergeben',
    receives: 'empfängt',
    sends: 'sendet',
    says: { right: 'richtig', wrong: 'falsch' },
    found: (where) => `Falsch wird es in: ${where}.`,
    noneWrong: 'Nichts Abgelesenes ist falsch.',
    witness: {
      shows: (one, other) => `${one} und ${other} stimmen überein: Beide zeigen den Fehler.`,
      doesNotShow: (one, other) => `Sie unterscheiden sich: ${other} zeigt den Fehler, ${one} nicht.`,
      cannotSay: (one, other) => `Ob ${one} ihn zeigt wie ${other}, konnte niemand sagen.`,
    },
  },
});
const signs = { right: '✓', wrong: '✗' } as const;
const tones = { right: 'good', wrong: 'refusal' } as const;
const witnessTones = { shows: 'good', doesNotShow: 'refusal', cannotSay: 'plain' } as const;

/** Along the signal, which device reads right and which wrong, and whether displays or sources agree; nothing where nobody looked. */
export function TraceGlance({ triage, chain }: { triage: TriageRecord; chain: Chain }) {
  const t = words();
  const readings = readingsAsFound(triage);
  const trace = readings.length === 0 ? null : traceOf({ chain, symptom: triage.symptom }, readings);
  const witnesses = standingLooks(triage, 'witness');
  const hasPoints = trace !== null && trace.points.length > 0;
  if (!hasPoints && witnesses.length === 0) return null;
  return (
    <section class="stack" aria-label={t.title}>
      <h3>{t.title}</h3>
      {hasPoints && <Along trace={trace} chain={chain} />}
      <ul class="trace-witnesses">
        {witnesses.map(({ id, what }) => (
          <li key={id}>
            <Badge tone={witnessTones[what.answer]}>
              {t.witness[what.answer](deviceWord(chain, what.deviceId), deviceWord(chain, what.besideId))}
            </Badge>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Along({ trace: { path, points, found, firstWrong }, chain }: { trace: Trace; chain: Chain }) {
  const t = words();
  const read = path.deviceIds
    .map((deviceId) => ({ deviceId, own: points.filter((point) => point.deviceId === deviceId) }))
    .filter(({ own }) => own.length > 0);
  return (
    <>
      <ol class="trace-line">
        {read.map(({ deviceId, own }) => (
          <li key={deviceId}>
            <strong>{deviceWord(chain, deviceId)}</strong>
            {own.map((point) => (
              <Point key={point.at} point={point} />
            ))}
          </li>
        ))}
      </ol>
      <p>
        {found !== null ? (
          <strong>{t.found(placeWord(chain, found))}</strong>
        ) : (
          firstWrong === null && t.noneWrong
        )}
      </p>
    </>
  );
}

const Point = ({ point: { at, says } }: { point: TracePoint }) => (
  <Badge tone={tones[says]}>
    {words()[at]}: {words().says[says]} <span aria-hidden="true">{signs[says]}</span>
  </Badge>
);
