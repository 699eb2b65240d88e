import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section } from '../../../page/parts.ts';
import { moment, nameOf } from './words.ts';

/** Which texts of the log are not there any more. */
export const erasedSection = (file: CaseFile): Html | null =>
  file.erased.length === 0
    ? null
    : section(
        'erased',
        'Erased texts',
        list(
          file.erased.map(
            ({ event, pointer, at, by }) =>
              html`Event ${event} of the log, <code>${pointer}</code> <span class="quiet">${nameOf(file, by)}, ${moment(at)}</span>`,
          ),
        ),
        html`<p class="quiet">The log still verifies: log/HOW-TO-VERIFY.txt says how.</p>`,
      );
