import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section } from '../../../page/parts.ts';
import { signature } from './parts.ts';
import { wordsOf } from './tongue.ts';

/** Which texts of the log are not there any more. */
export function erasedSection(file: CaseFile): Html | null {
  const t = wordsOf(file).erased;
  return file.erased.length === 0
    ? null
    : section(
        'erased',
        t.title,
        list(
          file.erased.map(
            ({ event, pointer, at, by }) =>
              html`${t.event(event)} <code>${pointer}</code> <span class="quiet">${signature(file, { at, by })}</span>`,
          ),
        ),
        html`<p class="quiet">${t.stillVerifies}</p>`,
      );
}
