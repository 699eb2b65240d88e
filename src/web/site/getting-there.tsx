import { useState } from 'preact/hooks';
import type { Site } from '../../../shared/contract/site.ts';
import { Button } from '../parts/button.tsx';
import { Facts } from '../parts/card.tsx';
import { Notice } from '../parts/notice.tsx';
import { terms } from '../words/terms.ts';
import { lengthOfTime } from '../words/times.ts';
import { siteWords } from './words.ts';
import './site.css';

/**
 * Address, phone, the contact's hours, access and travel. `geo:` has whatever map the phone has look the address up (RFC 5870 knows
 * coordinates only; the query part is common practice). Where no map answers, the address can be copied.
 */
export function GettingThere({ site }: { site: Site }) {
  const t = siteWords();
  const { name, phone, hours } = site.contact;
  return (
    <div class="stack">
      <Facts
        facts={[
          [t.address, site.address],
          [t.contact, [name, phone].filter((part) => part !== null && part !== '').join(', ')],
          [t.hours, hours],
          [t.access, site.accessNotes],
          [
            t.travel,
            [site.travelMin == null ? '' : t.wayMin(lengthOfTime(site.travelMin)), site.travelNotes]
              .filter((part) => part !== '')
              .join('. '),
          ],
        ]}
      />
      <div class="row">
        {phone !== null && phone !== '' && (
          <a class="button" href={`tel:${phone.replaceAll(/[^+\d]/g, '')}`}>
            {t.call(name ?? phone)}
          </a>
        )}
        <a class="button" href={`geo:0,0?q=${encodeURIComponent(site.address)}`}>
          {t.map}
        </a>
        <CopyAddress address={site.address} />
      </div>
    </div>
  );
}

function CopyAddress({ address }: { address: string }) {
  const t = siteWords();
  const [copied, setCopied] = useState(false);
  if (navigator.clipboard === undefined) return null;
  const copy = () =>
    navigator.clipboard.writeText(address).then(
      () => setCopied(true),
      () => setCopied(false),
    );
  return (
    <>
      <Button onClick={() => void copy()}>{t.copyAddress}</Button>
      <span role="status">{copied ? t.copied : ''}</span>
    </>
  );
}

/** Where somebody could get hurt here: before everything else of a visit. */
export function Hazards({ site }: { site: Site }) {
  const t = siteWords();
  if (site.hazards.length === 0) return null;
  return (
    <Notice tone="caution">
      <h2>{t.hazards}</h2>
      <ul class="site-hazards">
        {site.hazards.map((hazard) => (
          <li key={hazard.kind + hazard.text}>
            <strong>{terms().hazard[hazard.kind]}</strong>
            {hazard.text !== '' && <span>{hazard.text}</span>}
          </li>
        ))}
      </ul>
      <span>{t.caution}</span>
    </Notice>
  );
}
