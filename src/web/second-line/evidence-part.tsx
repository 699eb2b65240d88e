import { useEffect, useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { readFile } from '../api/client.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Badge } from '../parts/notice.tsx';
import { saveAs } from '../parts/save-as.ts';
import { typed, typedText } from '../parts/typed.tsx';
import { belongsTo } from '../place/belongs-to.ts';
import { placeWord } from '../place/place-words.ts';
import { terms } from '../words/terms.ts';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { useBlobAddress } from './files.ts';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

const placeOf = ({ tie }: EvidenceItem): Place =>
  tie.linkId !== null
    ? { kind: 'link', linkId: tie.linkId }
    : tie.deviceId !== null
      ? { kind: 'device', deviceId: tie.deviceId }
      : { kind: 'chain' };

/** What belongs to a device or cable. */
export const itemsAt = ({ evidence }: CaseFacts, place: Place): EvidenceItem[] =>
  evidence.filter((item) => belongsTo(placeOf(item), place));

/** All evidence, by the device or cable it belongs to. */
export function EvidencePart({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const { chain } = facts;
  const places: Place[] = [
    ...chain.devices.map(({ id }): Place => ({ kind: 'device', deviceId: id })),
    ...chain.links.map(({ id }): Place => ({ kind: 'link', linkId: id })),
  ];
  const loose = facts.evidence.filter((item) => !places.some((place) => belongsTo(placeOf(item), place)));
  const groups = [
    ...places.map((place) => ({ name: placeWord(chain, place), items: itemsAt(facts, place) })),
    { name: t.ofTheWhole, items: loose },
  ].filter(({ items }) => items.length > 0);
  return (
    <CasePart
      id="evidence"
      title={t.evidence}
      isFolded
      digest={<Badge>{number(facts.evidence.length)}</Badge>}
    >
      {groups.length === 0 && <p>{t.noEvidence}</p>}
      <div class="two-sides">
        {groups.map(({ name, items }) => (
          <div key={name} class="stack">
            <h3>{name}</h3>
            <EvidenceList facts={facts} items={items} />
          </div>
        ))}
      </div>
    </CasePart>
  );
}

export function EvidenceList({ facts, items }: { facts: CaseFacts; items: readonly EvidenceItem[] }) {
  return (
    <ul class="case-evidence">
      {items.map((item) => (
        <li key={item.id}>
          <Item facts={facts} item={item} />
        </li>
      ))}
    </ul>
  );
}

function Item({ facts: { zone, nameOf }, item }: { facts: CaseFacts; item: EvidenceItem }) {
  const t = caseWords();
  const [isOpen, setOpen] = useState(false);
  const kind = terms().evidenceKind[item.kind];
  const shows = item.tie.shows === null ? '' : values().shows[item.tie.shows];
  const phase = item.reading?.kind === 'settings' ? t.phases[item.reading.phase] : '';
  const what = [kind, shows, phase].filter(Boolean).join(', ');
  return (
    <>
      {item.hasThumbnail && (
        <button type="button" class="case-thumbnail" onClick={() => setOpen(true)}>
          <Picture
            path={addressOf(addresses.evidenceThumbnail, { id: item.id })}
            alt={typedText(item.description) || what}
          />
        </button>
      )}
      <div>
        <strong>{what}</strong> {typed(item.description)}
        {item.reading?.kind === 'firmware' && <span class="figures"> {item.reading.level}</span>}
        {item.reading?.kind === 'note' && <span> {typed(item.reading.text)}</span>}
        {item.reading?.kind === 'settings' && (
          <ul class="figures">
            {Object.entries(item.reading.values).map(([key, value]) => (
              <li key={key}>
                {key}: {String(value)}
              </li>
            ))}
          </ul>
        )}
        <div class="soft">
          {dayAndTime(item.at, zone)}, {nameOf(item.by)}
          {item.sizeBytes !== null && `, ${number(item.sizeBytes / 1024, 0)} KiB`}
        </div>
        {item.withdrawn !== null && (
          <Badge tone="caution">
            {t.withdrawn}: {typed(item.withdrawn.reason)}
          </Badge>
        )}
        {item.fileName !== null && !item.hasThumbnail && (
          <div class="not-printed">
            <Button kind="quiet" onClick={() => void save(item)}>
              {t.saveFile(item.fileName)}
            </Button>
          </div>
        )}
      </div>
      {isOpen && (
        <Dialog title={typedText(item.description) || what} onClose={() => setOpen(false)}>
          <Picture
            path={addressOf(addresses.evidenceContent, { id: item.id })}
            alt={typedText(item.description) || what}
          />
          <Button onClick={() => void save(item)}>{t.saveFile(item.fileName ?? '')}</Button>
        </Dialog>
      )}
    </>
  );
}

async function save({ id, fileName }: EvidenceItem): Promise<void> {
  const file = await readFile(addressOf(addresses.evidenceContent, { id }));
  if (file !== null) saveAs(file, fileName ?? id);
}

/** A picture that only a signed-in member may have. */
function Picture({ path, alt }: { path: string; alt: string }) {
  const [blob, setBlob] = useState<Blob | null | undefined>(undefined);
  useEffect(() => {
    let wanted = true;
    void readFile(path).then((file) => {
      if (wanted) setBlob(file);
    });
    return () => {
      wanted = false;
    };
  }, [path]);
  const address = useBlobAddress(blob ?? null);
  if (address === null) return <span>{blob === undefined ? '…' : `${caseWords().noPicture}: ${alt}`}</span>;
  return <img src={address} alt={alt} />;
}
