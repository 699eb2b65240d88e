import { withErasuresTold } from '../../../../shared/contract/erased-text.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { Html, html } from '../../../page/html.ts';
import { style } from '../../../page/style.ts';
import { firmwareSection, prerequisiteSection, settingsSection } from './baseline.ts';
import { chainSection } from './chain-section.ts';
import { changeSection } from './changes.ts';
import { choiceSection } from './client-choice.ts';
import { noteSection, packetSection } from './closing.ts';
import { erasedSection } from './erased.ts';
import { evidenceSection, type Thumbnails } from './evidence.ts';
import { leftInSection } from './left-in.ts';
import { logSection } from './logs.ts';
import { clientSection, opening } from './opening.ts';
import { reportSection } from './reports.ts';
import { requestSection, waiverSection } from './requests.ts';
import { sideSection } from './side.ts';
import { standingSection } from './standing.ts';
import { erasureWords, wordsOf } from './tongue.ts';
import { waitSection } from './waits.ts';
import { watchSection } from './watches.ts';

export type { Thumbnails } from './evidence.ts';

/**
 * The case for a second-line engineer who has never seen the site: one HTML file that needs nothing else, prints,
 * and runs nothing. Links lead to the evidence beside it in the bag. In the language that the case file names.
 */
export function caseSummary(file: CaseFile, thumbnails: Thumbnails): string {
  const title = wordsOf(file).title(file.ticket.number, file.packet.version);
  const page = html`<!doctype html>
<html lang="${file.language}">
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
${reportSection(file)}
${logSection(file)}
${sideSection(file)}
${changeSection(file)}
${leftInSection(file)}
${standingSection(file)}
${choiceSection(file)}
${waitSection(file)}
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
  return withErasuresTold(page.markup, (erasure) => html`${erasureWords(file, erasure)}`.markup);
}
