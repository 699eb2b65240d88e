import { findLink, linkEnds } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { ChangeKind } from '../../../shared/contract/triage.ts';
import { cautionsAt, needsAt } from '../../../shared/isolation/change-at.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import type { Caution } from '../../../shared/isolation/change-facts.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { describeOwn, type Made } from './own.ts';

/** A change that makes sense on this chain with what is known of the side: all that planning asks of it. */
export type PossibleChange = {
  kind: ChangeKind;
  target: Place;
  /** Of an organisation's own kind, what it says of it; null for every other. */
  own: OwnChange | null;
  /** Was made and judged in this round already. */
  tried: boolean;
  /** Minutes, by the figures of the fault table. */
  setupMin: number;
  restoreMin: number;
};

/** The same, and what to know before making it. */
export type ApplicableChange = PossibleChange & {
  /** What it is, and where. */
  text: Message;
  /** Has to be put back; other kinds may stay once they cleared the fault. */
  diagnostic: boolean;
  needs: Message[];
  caution: Message[];
  instructions: Message;
  afterwards: Message;
};

/** A change with what to know before making it. @param chain with what was found by looking */
export function describedChange(chain: Chain, change: PossibleChange): ApplicableChange {
  const { kind, target, own } = change;
  const caution = careFor(chain, change);
  if (own !== null) return { ...change, ...describeOwn(chain, { target, own }), caution };
  const { diagnostic, needs } = changeCatalogue[kind];
  return {
    ...change,
    text: message('changeAt', { change: kind, place: namedPlace(chain, target) }),
    diagnostic,
    needs: [...needs.map((need) => message(need)), ...needsAt(chain, kind, target)],
    caution,
    instructions: message('changeInstructions', { change: kind }),
    afterwards: message('changeAfterwards', { change: kind }),
  };
}

/** What to take care of: what an organisation says of its own kind, then what kind and place ask for. */
export function careFor(chain: Chain, { kind, target, own }: Made): Message[] {
  const said = own == null || own.caution === '' ? [] : [message('asWritten', { sentence: own.caution })];
  const codes = new Set([...changeCatalogue[kind].cautions, ...cautionsThere(chain, kind, target)]);
  return [...said, ...[...codes].map((code) => message(code))];
}

/** What the place itself adds, for any change and for this one: what hangs overhead, carries light, or lies in a wall. */
function cautionsThere(chain: Chain, kind: ChangeKind, target: Place): Caution[] {
  const own = cautionsAt(chain, kind, target);
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  if (link === undefined) return own;
  const optical: Caution[] = link.construction === 'activeOptical' ? ['cautionOpticalLight'] : [];
  // What is done from the floor alone is never told with a ladder.
  const fromFloor = changeCatalogue[kind].cautions.includes('cautionFlexByHand');
  const isAtDisplay = linkEnds(chain, link)?.sink.role === 'display';
  const overhead: Caution[] = isAtDisplay && !fromFloor ? ['cautionDisplay'] : [];
  const wall: Caution[] = link.route === 'inWall' ? ['cautionCableInWall'] : [];
  return [...optical, ...overhead, ...own, ...wall];
}
