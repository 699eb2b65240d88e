import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';
import type { Look } from '../../../../shared/contract/look.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { message } from '../../../../shared/message/index.ts';
import { describeKept, readingsAsFound, traceOf } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list } from '../../../page/parts.ts';
import { signature, struck } from './parts.ts';
import { inWords, wordsOf } from './tongue.ts';

/** What was looked at without changing anything, and what the readings say together; nothing where nothing was. */
export function lookList(file: CaseFile): Html | null {
  const t = wordsOf(file).side;
  const looks = file.triage.looks.map(
    (look) => html`${oneLook(file, look)} <span class="quiet">${signature(file, look)}</span>`,
  );
  const found = foundByTrace(file);
  return looks.length === 0
    ? null
    : html`<h3>${t.looks}</h3>${list(looks)}${found === null ? '' : html`<p>${found}</p>`}`;
}

const where =
  ({ triage }: CaseFile) =>
  (place: Place) =>
    triage.asFound === null
      ? ({ kind: 'chain', name: '' } as const)
      : namedPlace(triage.asFound.chain, place);

function oneLook(file: CaseFile, look: Look): string | Html {
  const said = inWords(file, describeKept(look, where(file)));
  return look.withdrawn === null ? said : struck(said, wordsOf(file).side.withdrawn(look.withdrawn.reason));
}

/** The first device that receives right and sends wrong, or the first link whose ends differ. */
function foundByTrace(file: CaseFile): string | null {
  const { asFound, symptom } = file.triage;
  if (asFound === null) return null;
  const found = traceOf({ chain: asFound.chain, symptom }, readingsAsFound(file.triage))?.found ?? null;
  if (found === null) return null;
  const place = where(file)(found);
  return inWords(file, message(found.kind === 'device' ? 'traceFoundDevice' : 'traceFoundLink', { place }));
}

/** That work went on without a side, with why. */
export function withoutSideWords(file: CaseFile): string | null {
  const { withoutSide, round } = file.triage;
  return withoutSide?.round === round
    ? inWords(file, message('workedWithoutSide', { reason: withoutSide.reason }))
    : null;
}
