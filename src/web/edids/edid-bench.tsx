import { useState } from 'preact/hooks';
import { messageKey } from '../../../shared/message/index.ts';
import {
  compareEdids,
  type DecodedEdid,
  decodeEdid,
  readEdidText,
} from '../../../shared/signal/edid/index.ts';
import { Button } from '../parts/button.tsx';
import { useDraftForm } from '../store/use-draft.ts';
import { inWords } from '../words/sentence.tsx';
import { EdidFacts } from './edid-facts.tsx';
import { EdidSource } from './edid-source.tsx';
import { LimitedEdid } from './limited-edid.tsx';
import { edidWords } from './words.ts';
import './edids.css';

const empty = { first: '', second: '' };

/** The EDID in what was pasted; null where there is none. */
function decodedOf(text: string): DecodedEdid | null {
  const { bytes } = readEdidText(text);
  return bytes.length === 0 ? null : decodeEdid(bytes);
}

/** EDIDs that somebody pastes, attaches or takes from a ticket's evidence: read, compared, limited and saved. */
export function EdidBench({ ticketId }: { ticketId: string }) {
  const t = edidWords();
  const [texts, write, forget] = useDraftForm(`edids ${ticketId}`, empty);
  const first = decodedOf(texts.first);
  const second = decodedOf(texts.second);
  return (
    <div class="stack edid-bench">
      <EdidSource
        ticketId={ticketId}
        label={t.first}
        text={texts.first}
        onText={(text) => write({ first: text })}
      />
      {texts.first !== '' && <Read decoded={first} says={t.saysFirst} />}
      {texts.first !== '' && (
        <EdidSource
          ticketId={ticketId}
          label={t.second}
          text={texts.second}
          onText={(text) => write({ second: text })}
        />
      )}
      {texts.second !== '' && <Read decoded={second} says={t.saysSecond} />}
      <Compared first={first} second={second} />
      {first?.edid && <LimitedEdid edid={first.edid} />}
      {texts.first !== '' && (
        <div>
          <Button kind="quiet" onClick={() => void forget()}>
            {t.clear}
          </Button>
        </div>
      )}
    </div>
  );
}

function Read({ decoded, says }: { decoded: DecodedEdid | null; says: string }) {
  const t = edidWords();
  const [isOpen, setOpen] = useState(true);
  if (decoded === null) return <p role="status">{t.noEdid}</p>;
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{says}</summary>
      <EdidFacts decoded={decoded} />
    </details>
  );
}

function Compared({ first, second }: { first: DecodedEdid | null; second: DecodedEdid | null }) {
  const t = edidWords();
  if (!first?.edid || !second?.edid) return null;
  const differences = compareEdids(first.edid, second.edid, 'overTime');
  return (
    <section class="stack" aria-label={t.compared}>
      <h3>{t.compared}</h3>
      {differences.length === 0 ? (
        <p>{t.same}</p>
      ) : (
        <ul>
          {differences.map(({ text }) => (
            <li key={messageKey(text)}>{inWords(text)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
