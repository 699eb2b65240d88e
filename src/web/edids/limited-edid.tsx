import { useState } from 'preact/hooks';
import { messageKey } from '../../../shared/message/index.ts';
import {
  compareEdids,
  type Edid,
  type EdidLimits,
  encodeEdid,
  limitEdid,
} from '../../../shared/signal/edid/index.ts';
import { Button } from '../parts/button.tsx';
import { SelectField } from '../parts/field.tsx';
import { saveAs } from '../parts/save-as.ts';
import { Ticks } from '../parts/tick.tsx';
import { inWords } from '../words/sentence.tsx';
import { edidWords } from './words.ts';

/** Character rates of the links that the trade speaks of by their bit rate. */
const linkLimits = {
  all: {},
  gbps18: { maxTmdsCharacterRateMHz: 600, dropFrl: true },
  gbps10: { maxTmdsCharacterRateMHz: 340 },
  gbps9: { maxTmdsCharacterRateMHz: 300 },
  gbps5: { maxTmdsCharacterRateMHz: 165 },
} as const satisfies Record<string, EdidLimits>;
type Link = keyof typeof linkLimits;
const links = Object.keys(linkLimits) as Link[];

const drops = ['drop420', 'dropHdr', 'dropVrr', 'dropCompression', 'stereoOnly'] as const;
type Drop = (typeof drops)[number];

/** The EDID with less in it, for a device that shows one from a file: what it loses, and the file. */
export function LimitedEdid({ edid }: { edid: Edid }) {
  const t = edidWords();
  const [link, setLink] = useState<Link>('all');
  const [without, setWithout] = useState<Drop[]>([]);
  const limited = limitEdid(edid, {
    ...linkLimits[link],
    ...Object.fromEntries(without.map((drop) => [drop, true])),
  });
  const losses = compareEdids(edid, limited, 'passedOn');
  const isLimited = link !== 'all' || without.length > 0;
  return (
    <section class="stack" aria-label={t.limited}>
      <h3>{t.limited}</h3>
      <p class="soft">{t.limitLead}</p>
      <SelectField
        label={t.link}
        value={link}
        onChoose={setLink}
        options={links.map((value) => ({ value, label: t.links[value] }))}
      />
      <Ticks
        label={t.without}
        options={drops.map((value) => ({ value, label: t.limits[value] }))}
        values={without}
        onChange={setWithout}
      />
      {isLimited && losses.length === 0 && <p role="status">{t.losesNothing}</p>}
      {losses.length > 0 && (
        <div>
          <span>{t.loses}</span>
          <ul>
            {losses.map(({ text }) => (
              <li key={messageKey(text)}>{inWords(text)}</li>
            ))}
          </ul>
        </div>
      )}
      <div>
        <Button
          disabled={!isLimited}
          onClick={() => saveAs(new Blob([Uint8Array.from(encodeEdid(limited))]), 'edid-limited.bin')}
        >
          {t.save}
        </Button>
      </div>
    </section>
  );
}
