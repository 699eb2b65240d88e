import { useEffect, useState } from 'preact/hooks';
import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Tick } from '../parts/tick.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { percent } from '../words/percent.ts';
import { inWords, said } from '../words/sentence.tsx';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import type { CaseInputs, SuspectsOverTime } from './suspects-over-time.ts';
import { letters, PointMark, type Scale, SuspectsPlot } from './suspects-plot.tsx';
import { Table } from './table.tsx';
import { caseWords } from './words.ts';

/** What it can still be: how that grew with every result, and what weighs for and against each suspect now. */
export function SuspectsPart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const plan = useDocument(paths.plan(facts.ticket.id));
  const over = useSuspectsOverTime(facts);
  return (
    <CasePart id="suspects" title={t.suspects}>
      {over === null ? <p role="status">{t.computing} …</p> : <OverTime facts={facts} over={over} />}
      <h3>{t.suspectsNow}</h3>
      <p class="soft">{t.decibans}</p>
      <DocumentView document={plan}>
        {({ suspects, sentence }) => (
          <>
            <Table
              caption={t.suspectsNow}
              heads={[t.suspect, t.chance, t.howItFails, t.weighs]}
              figures={[1]}
              rows={suspects
                .filter(({ probability }, at) => at < 3 || probability >= 0.01)
                .slice(0, 8)
                .map(({ name, place, probability, modes, because }) => [
                  place === null ? inWords(name) : placeWord(facts.chain, place),
                  percent(probability),
                  modes
                    .slice(0, 2)
                    .map((mode) => `${said(mode.name).text} ${percent(mode.probability)}`)
                    .join('; '),
                  because.length === 0 ? (
                    ''
                  ) : (
                    <ul key="because" class="case-because">
                      {because
                        .toSorted((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans))
                        .slice(0, 4)
                        .map(({ text, decibans }) => (
                          <li key={said(text).text}>
                            <span class="figures">
                              {decibans > 0 ? '+' : '−'}
                              {number(Math.abs(decibans), 1)}
                            </span>{' '}
                            {inWords(text)}
                          </li>
                        ))}
                    </ul>
                  ),
                ])}
            />
            {!facts.ticket.state.startsWith('escalated') && (
              <p>
                <strong>{t.planSays}</strong> {inWords(sentence)}
              </p>
            )}
          </>
        )}
      </DocumentView>
    </CasePart>
  );
}

function OverTime({ facts, over }: { facts: CaseFacts; over: SuspectsOverTime }) {
  const t = caseWords();
  const [scale, setScale] = useState<Scale>('chance');
  const nameOf = ({ place, name }: SuspectsOverTime['lines'][number]) =>
    place === null ? said(name).text : placeWord(facts.chain, place);
  return (
    <>
      <p class="soft">{t.howToReadSuspects}</p>
      <SuspectsPlot
        over={over}
        label={t.suspectsPlot(over.lines.length, over.stages.length - 1)}
        scale={scale}
        zone={facts.zone}
      />
      <div class="row">
        <ul class="case-legend">
          {over.lines.map((line, nth) => (
            <li key={line.key}>
              <svg aria-hidden="true" width="14" height="14" class={`plot-line plot-line-${nth}`}>
                <PointMark nth={nth} x={7} y={7} />
              </svg>
              <strong>{letters[nth]}</strong> {nameOf(line)}
            </li>
          ))}
        </ul>
        <div class="not-printed">
          <Tick
            label={t.byOdds}
            isOn={scale === 'odds'}
            onChange={(isOn) => setScale(isOn ? 'odds' : 'chance')}
          />
        </div>
      </div>
      <ol class="case-steps" start={0}>
        {over.stages.map(({ key, at, text }) => (
          <li key={key}>
            {text === null ? t.atTheBeginning : inWords(text)}
            {at !== null && <span class="soft"> {dayAndTime(at, facts.zone)}</span>}
          </li>
        ))}
      </ol>
      <details>
        <summary>{t.asTable}</summary>
        <Table
          caption={t.suspectsPlotTable}
          heads={[t.step, t.learned, ...over.lines.map((line, nth) => `${letters[nth]} ${nameOf(line)}`)]}
          figures={over.lines.map((_, nth) => nth + 2)}
          rows={over.stages.map(({ at, text }, step) => [
            step,
            <>
              {at !== null && <span class="soft">{dayAndTime(at, facts.zone)} </span>}
              {text === null ? t.atTheBeginning : inWords(text)}
            </>,
            ...over.lines.map(({ chances }) => percent(chances[step] ?? 0)),
          ])}
        />
      </details>
    </>
  );
}

/** Computed on this device, by a worker of its own; null until it is there. */
function useSuspectsOverTime({ ticket, chain, logs }: CaseFacts): SuspectsOverTime | null {
  const settings = useDocument(paths.organisation).body?.settings;
  const levels = useDocument(paths.firmwareLevels).body?.items;
  const edids = useDocument(paths.chainEdids(ticket.chainId)).body;
  const [over, setOver] = useState<SuspectsOverTime | null>(null);
  useEffect(() => {
    if (settings === undefined || levels === undefined || edids === null) return undefined;
    const worker = new Worker(new URL('./suspects-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<SuspectsOverTime>) => {
      setOver(data);
      worker.terminate();
    };
    worker.postMessage({ ticket, chain, settings, levels, logs, edids } satisfies CaseInputs);
    return () => worker.terminate();
  }, [ticket, chain, settings, levels, edids, logs.length]);
  return over;
}
