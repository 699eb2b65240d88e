import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { SetAside } from '../../../../shared/contract/triage.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { changesInPlace } from './changes.ts';
import { facts, placeWords, signature } from './parts.ts';
import { remedyWords } from './remedy.ts';
import { wordsOf } from './tongue.ts';
import { joined } from './words.ts';

/** What is in the chain now that was not there as found, and the culprit and remedy where there are any. */
export function standingSection(file: CaseFile): Html {
  const t = wordsOf(file).standing;
  const { remedy, setAside } = file.triage;
  return section(
    'standing',
    t.title,
    list(changesInPlace(file)) ?? none(t.nothingInPlace),
    culpritFacts(file),
    remedy !== null &&
      facts([
        [t.remedy, remedyWords(file, remedy)],
        [t.limits, remedy.kind === 'workaround' ? remedy.limits : null],
        [
          t.acceptedBy,
          remedy.kind === 'workaround' || remedy.kind === 'onSuspicion' ? remedy.acceptedBy : null,
        ],
      ]),
    setAside.length > 0 && html`<h3>${t.setAside}</h3>`,
    list(setAside.map((aside) => asideWords(file, aside))),
  );
}

function culpritFacts(file: CaseFile): Html | null {
  const t = wordsOf(file).standing;
  const { culprit } = file.triage;
  if (culprit === null) return null;
  const { confirmation, namedBy } = culprit;
  const who = signature(file, culprit);
  return facts([
    [t.culprit, placeWords(file, culprit.place)],
    [t.why, culprit.explanation],
    [t.confirmed, confirmation.kind === 'returned' ? t.cameBack : t.notDone(confirmation.reason)],
    [t.namedBy, namedBy === 'support' ? t.secondLine(who) : who],
  ]);
}

/** Of what a correction set aside nobody gave a reason. */
function asideWords(file: CaseFile, aside: SetAside): string {
  const { culprit, remedy, because, reason } = aside;
  const what = joined(
    [
      culprit === null ? '' : placeWords(file, culprit.place),
      remedy === null ? '' : remedyWords(file, remedy),
    ],
    '; ',
  );
  const why = because === 'correction' ? joined([wordsOf(file).standing.corrected, reason], ' ') : reason;
  return `${joined([what, why], ' – ')} (${signature(file, aside)})`;
}
