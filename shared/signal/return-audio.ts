import { linkEnds } from '../chain/look-up.ts';
import { namedLink } from '../chain/named-place.ts';
import type { Chain, Link } from '../contract/chain.ts';
import { type Message, message } from '../message/index.ts';

/** Sound that goes back over a link, from the display's end to the source's. */
export type ReturnAudio = {
  linkId: string;
  /** What both ends do: the older of the two. */
  kind: 'arc' | 'earc';
  carried: 'yes' | 'no' | 'unknown';
  sentence: Message;
};

/**
 * Whether cables carry what only copper of their own does without electronics: the pair for return audio is none of the
 * fast lanes, and an optical cable or an extender may leave it out (common practice, no source).
 */
const usually: Record<Link['construction'], ReturnAudio['carried']> = {
  passiveCopper: 'yes',
  activeCopper: 'unknown',
  activeOptical: 'unknown',
  twistedPairExtender: 'unknown',
};

/** Return audio on each link whose both ends do it, in the order of the links. It shares the picture's cable, the other way. */
export function returnAudioOf(chain: Chain): ReturnAudio[] {
  return chain.links.flatMap((link): ReturnAudio[] => {
    const ends = linkEnds(chain, link);
    const kinds = [ends?.output.returnAudio, ends?.input.returnAudio];
    if (!kinds.every((kind) => kind === 'arc' || kind === 'earc')) return [];
    const kind = kinds.includes('arc') ? 'arc' : 'earc';
    const known = link.returnAudio ?? 'unknown';
    const carried = known === 'unknown' ? usually[link.construction] : known;
    const values = { link: namedLink(chain, link), kind: kind === 'arc' ? 'ARC' : 'eARC' };
    return [{ linkId: link.id, kind, carried, sentence: message(codes[carried], values) }];
  });
}

const codes = {
  yes: 'returnAudioCarried',
  no: 'returnAudioNotCarried',
  unknown: 'returnAudioUnknown',
} as const;
