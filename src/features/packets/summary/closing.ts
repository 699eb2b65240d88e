import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section } from '../../../page/parts.ts';
import { facts, signature } from './parts.ts';
import { wordsOf } from './tongue.ts';

/** Notes that people left on the ticket. */
export const noteSection = (file: CaseFile): Html | null =>
  file.triage.notes.length === 0
    ? null
    : section(
        'notes',
        wordsOf(file).note,
        list(
          file.triage.notes.map(
            (note) => html`${note.text} <span class="quiet">${signature(file, note)}</span>`,
          ),
        ),
      );

/** What else is in the packet, and how to tell that it is whole. */
export function packetSection(file: CaseFile): Html {
  const t = wordsOf(file).packet;
  return section(
    'packet',
    t.title,
    facts([
      ['case.json', t.caseFile],
      ['chain/', t.chain],
      ['timeline.csv, timeline.json', t.timeline],
      ['log/', t.log],
      ['evidence/', t.files],
    ]),
    html`<p>${t.verify('bagit.txt')}</p><ul><li><code>sha256sum -c manifest-sha256.txt</code></li>
    <li><code>sha256sum -c tagmanifest-sha256.txt</code></li></ul>
    <p class="quiet">${t.ids(file.packet.id, file.ticket.id)}</p>`,
  );
}
