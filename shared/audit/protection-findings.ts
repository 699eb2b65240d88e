import { namedPlace } from '../chain/named-place.ts';
import type { Chain, Finding, Place } from '../contract/chain.ts';
import { type Message, message } from '../message/index.ts';
import { chainProtection } from '../signal/content-protection/index.ts';

const linkAt = (linkId: string): Place => ({ kind: 'link', linkId });
const named = (chain: Chain, place: Place): Message =>
  message('thePlace', { place: namedPlace(chain, place) });

/** Displays that protected content of today can't reach, as findings of the audit. */
export function protectionFindings(chain: Chain): Finding[] {
  return chainProtection(chain, 'type1')
    .displays.filter((display) => display.shown === 'no')
    .map((display) => {
      const place: Place =
        display.linkId === null ? { kind: 'device', deviceId: display.displayId } : linkAt(display.linkId);
      return {
        rule: 'content-protection',
        severity: 'shouldFix',
        place,
        placeName: named(chain, place),
        text: display.sentence,
        whatToDo: message('findProtectionVersions'),
        source: message('streamTypeFromMemory'),
        cautions: [],
      };
    });
}
