import { isReason } from '../../../shared/contract/limits.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import type { CompleteCommandOf } from '../events.ts';

/** What is said of a change by whoever declares it, or enters it afterwards. */
type Said = CompleteCommandOf<'declareChange'> | CompleteCommandOf<'enterLateChange'>;

/** A change that only whoever makes it knows has to be described; an own kind has to be the organisation's. */
export function whyNotDescribed({ kind, detail, known }: Said): Message | null {
  const { describedBy } = changeCatalogue[kind];
  if (describedBy === 'whoDeclares') return isReason(detail) ? null : message('describeTheChange');
  return describedBy === 'organisation' && known?.own == null ? message('ownKindUnknown') : null;
}

/** Whether a change may stay once it cleared the fault, as whoever knows the kind says. */
export function mayStay({ kind, known, mayStay: isSaid }: Said): boolean {
  const { describedBy, diagnostic } = changeCatalogue[kind];
  switch (describedBy) {
    case 'program':
      return !diagnostic;
    case 'whoDeclares':
      return isSaid;
    case 'organisation':
      return known?.own?.mayStay === true;
  }
}
