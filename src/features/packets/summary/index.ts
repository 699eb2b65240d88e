import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { Html, html } from '../../../page/html.ts';
import { style } from '../../../page/style.ts';
import { tellErasures } from '../erased-words.ts';
import { chainSection, firmwareSection, prerequisiteSection, settingsSection } from './chain-section.ts';
import { changeSection, standingSection } from './changes.ts';
import {
  evidenceSection,
  noteSection,
  packetSection,
  requestSection,
  type Thumbnails,
  waiverSection,
} from './closing.ts';
import { erasedSection } from './erased.ts';
import { logSection } from './logs.ts';
import { clientSection, opening } from './opening.ts';
import { sideSection } from './side.ts';
import { watchSection } from './watches.ts';
import { nameOf } from './words.ts';

export type { Thumbnails } from './closing.ts';

/**
 * The case for a second-line engineer who has never seen the site: one HTML file that needs nothing else, prints,
 * and runs nothing. Links lead to the evidence beside it in the bag.
 */
export function caseSummary(file: CaseFile, thumbnails: Thumbnails): string {
  const title = `Case ${file.ticket.number}, version ${file.packet.version}`;
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${title}</title>
<style>${new Html(style)}</style>
</head>
<body>
${opening(file)}
<main>
${clientSection(file)}
${chainSection(file)}
${prerequisiteSection(file)}
${watchSection(file)}
${logSection(file)}
${sideSection(file)}
${changeSection(file)}
${standingSection(file)}
${firmwareSection(file)}
${settingsSection(file)}
${requestSection(file)}
${waiverSection(file)}
${noteSection(file)}
${evidenceSection(file, thumbnails)}
${erasedSection(file)}
${packetSection(file)}
</main>
</body>
</html>
`;
  return tellErasures(page.markup, (memberId) => html`${nameOf(file, memberId)}`.markup);
}
