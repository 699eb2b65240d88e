import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Wait } from '../../../../shared/contract/triage.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section } from '../../../page/parts.ts';
import { numberedChange } from './changes.ts';
import { signature } from './parts.ts';
import { termOf, wordsOf } from './tongue.ts';
import { joined, moment } from './words.ts';

/** Times in which nobody worked on the case: what for, who had to act, and what stayed in place. */
export const waitSection = (file: CaseFile): Html | null =>
  file.triage.waits.length === 0
    ? null
    : section('waits', wordsOf(file).waits.title, list(file.triage.waits.map((wait) => oneWait(file, wait))));

function oneWait(file: CaseFile, wait: Wait): Html {
  const t = wordsOf(file).waits;
  const { at, until, ended, kind, what, actor, actorName, leftInPlace } = wait;
  const span = t.span(moment(at), moment(until), ended === null ? null : moment(ended.at));
  const who = joined([termOf(file, 'actingParty', actor), actorName ?? ''], ', ');
  const left = leftInPlace.map((id) => numberedChange(file, id));
  const more = joined(
    [
      t.toAct(who),
      left.length === 0 ? '' : t.leftInPlace(left.join('; ')),
      ended === null ? '' : joined([ended.because === 'revised' ? t.revised : t.resumed, ended.note], ' '),
    ],
    ' ',
  );
  return html`${termOf(file, 'waitingKind', kind)}: ${what} (${span}) <span class="quiet">${signature(file, wait)}</span><br>${more}`;
}
