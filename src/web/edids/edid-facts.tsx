import {
  audioName,
  type DecodedEdid,
  encodingNamesWithDepths,
  eotfNames,
  formatName,
  frlName,
  type SinkFormat,
  sinkCapabilities,
  summarise,
  tmdsRateName,
} from '../../../shared/signal/edid/index.ts';
import { Badge } from '../parts/notice.tsx';
import { inWords } from '../words/sentence.tsx';
import { edidWords } from './words.ts';

const tones = { error: 'refusal', warning: 'caution', note: 'plain' } as const;

/** What an EDID says, and what is wrong with it. */
export function EdidFacts({ decoded }: { decoded: DecodedEdid }) {
  const t = edidWords();
  const { edid, problems } = decoded;
  return (
    <div class="stack">
      {problems.length > 0 && (
        <ul>
          {problems.map(({ severity, block, offset, text }) => (
            <li key={`${block} ${offset} ${text.code}`}>
              <Badge tone={tones[severity]}>{t.severities[severity]}</Badge> {inWords(text)}{' '}
              <span class="soft">{t.at(block, offset)}</span>
            </li>
          ))}
        </ul>
      )}
      {edid && <Takes decoded={decoded} />}
    </div>
  );
}

function Takes({ decoded }: { decoded: DecodedEdid }) {
  const t = edidWords();
  const { edid, blockCount, checksumsValid } = decoded;
  if (!edid) return null;
  const summary = summarise(decoded);
  const sink = sinkCapabilities(edid);
  const { facts } = t;
  const made = summary.modelYear ?? summary.year;
  const rows: [string, string | null][] = [
    [facts.display, `${summary.manufacturer} ${summary.productName ?? summary.productCode}`],
    [facts.made, made === null ? null : String(made)],
    [facts.version, summary.version],
    [facts.blocks, `${blockCount}, ${checksumsValid ? t.checksumsRight : t.checksumsWrong}`],
    [
      facts.tmds,
      tmdsRateName(sink.maxTmdsCharacterRateMHz) + (sink.tmdsRateStated ? '' : ` (${t.notStated})`),
    ],
    [facts.frl, sink.frl && frlName(sink.frl)],
    [facts.depths, encodingNamesWithDepths(sink.depths).join(', ')],
    [facts.hdr, sink.eotfs.map((eotf) => eotfNames[eotf]).join(', ')],
    [facts.colorimetry, sink.colorimetry.join(', ')],
    [facts.audio, sink.audio.map(audioName).join(', ')],
    [facts.vrr, sink.vrr && `${sink.vrr.minHz}–${sink.vrr.maxHz ?? '?'} Hz`],
  ];
  return (
    <>
      <dl class="edid-facts">
        {rows.map(([label, value]) =>
          value === null || value === '' ? null : (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
      <details>
        <summary>{t.formats(sink.formats.length)}</summary>
        <ul class="edid-formats">
          {sink.formats.map((format, i) => (
            // The same format can be named twice, in one place and another.
            <li key={i}>
              <FormatLine format={format} />
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function FormatLine({ format: { timing, in420 } }: { format: SinkFormat }) {
  const t = edidWords();
  const note = { no: null, too: t.too420, only: t.only420 }[in420];
  return (
    <>
      {formatName(timing)}{' '}
      <span class="soft figures">
        {(timing.pixelClockKHz / 1000).toFixed(2)} MHz{note === null ? '' : `, ${note}`}
      </span>
    </>
  );
}
