import { namedPlace } from '../chain/named-place.ts';
import type { Chain, Finding, Place } from '../contract/chain.ts';
import { type Message, message } from '../message/index.ts';
import {
  type ContentDemand,
  chainProtection,
  type DisplayProtection,
  demandOf,
  type SourceTopology,
} from '../signal/content-protection/index.ts';
import { type AskedRuns, askedRuns } from '../signal/link-budget/index.ts';

const linkAt = (linkId: string): Place => ({ kind: 'link', linkId });
const named = (chain: Chain, place: Place): Message =>
  message('thePlace', { place: namedPlace(chain, place) });

/**
 * Displays that protected content of what is wanted on them can't reach, and more behind a source than it may drive, as
 * findings of the audit. Where the record wants nothing, what is sold today is taken: stream type 1.
 */
export function protectionFindings(chain: Chain): Finding[] {
  const wanted = askedRuns(chain);
  const protections = (['type0', 'type1'] as const).flatMap((demand) =>
    chainProtection(chain, demand)
      .displays.filter((display) => display.shown === 'no' && isAsked(wanted, display, demand))
      .map((display) => notShown(chain, display)),
  );
  const { topology } = chainProtection(chain);
  const tooMuch = topology.filter(({ within }) => !within).map((each) => tooMuchBehind(chain, each));
  return [...protections, ...tooMuch];
}

/** Whether something of this demand is wanted from a source on a display, and nothing of a stricter one. */
function isAsked(wanted: readonly AskedRuns[], display: DisplayProtection, demand: ContentDemand): boolean {
  if (wanted.length === 0) return demand === 'type1';
  const here = wanted
    .filter(
      ({ sourceIds, displayIds }) => sourceIds.has(display.sourceId) && displayIds.has(display.displayId),
    )
    .map(({ format }) => demandOf(format));
  return demand === 'type1' ? here.includes('type1') : here.length > 0 && !here.includes('type1');
}

function notShown(chain: Chain, display: DisplayProtection): Finding {
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
}

function tooMuchBehind(chain: Chain, { linkId, sentence, limit }: SourceTopology): Finding {
  const place = linkAt(linkId);
  return {
    rule: 'protection-topology',
    severity: 'shouldFix',
    place,
    placeName: named(chain, place),
    text: sentence,
    whatToDo: message('hangFewerBehindSource'),
    source: limit.source,
    cautions: [],
  };
}
