import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import { text } from '../../shared/contract/primitives.ts';
import { completenessItems } from '../../shared/contract/triage.ts';
import { openStage, type Stage } from './stage.ts';

/** What people, or those who mean ill, may write: markup, templates, our own sentences and codes, odd characters. */
const hostile = [
  '<script>window.hostile = 1</script>',
  '<img src=x onerror="window.hostile = 1">',
  '<svg onload="window.hostile = 1"></svg>',
  '"><b onmouseover=window.hostile=1>bold</b>',
  "' onfocus='window.hostile=1' autofocus='",
  '</p></li></ul></main><h1>Elsewhere</h1>',
  '<!-- a comment --> and after',
  '<style>body { display: none }</style>',
  '<a href="javascript:window.hostile=1">here</a>',
  'javascript:window.hostile=1',
  '&lt;b&gt; &amp;amp; &#60;i&#62; &nbsp;',
  `{{ 7 * 7 }} \${7 * 7} #{7 * 7} <%= 7 * 7 %>`,
  '%s %d %1$s {0} {name} :name $1 $& $$',
  '\\n \\u0041 \\x41 \\',
  '{"code":"watchRunning","values":{}}',
  'asWritten',
  'temporaryCable dropOuts noFaultFound',
  'log/noteWritten',
  'A watch is running: end it first.',
  'Nothing is plugged into it.',
  'Note: Watch ended. The fault is reproduced.',
  'Notiz: Beobachtung beendet. Der Fehler ist nachgestellt.',
  'Retest judged by the watch: cleared.',
  '‘Replace the cable’ at the cable C5',
  '50 % of 3.5 min, 1,000 times, 2 h 5 min',
  'ein|zwei||drei [link](x) **fett** `code` # Titel',
  '  kept   spaces   inside  ',
  'first line\nsecond line\n\nfourth line',
  'tab\there',
  '\u202Eright to left\u202C and back',
  '\u2066isolated\u2069 \u200Bzero\u200Dwidth\uFEFF',
  '\uFDD0marked\uFDD2 \uFDD1name\uFDD2 \uFDD3\uFDD31',
  'עברית und العربية mixed with 123',
  '中文 日本語 한국어 ไทย',
  'e\u0301 is not é, and Å is not Å',
  '👩‍👩‍👧‍👦 🏳️‍🌈 🇩🇪 ✔️',
  'ZALGO: Z̸̡̛a̷l̶g̵o̴',
  'ß ẞ İ ı ſ Ⅻ ﬁ',
  '‹›«»„“”‚‘’',
  '0',
  'null',
  'undefined',
  'NaN',
  '[object Object]',
  'true',
  '-1e999',
  "Robert'); DROP TABLE ticket;--",
  '=1+1',
  '../../../../etc/passwd',
  'a'.repeat(1500),
];

describe('words that mean ill, or look like ours', () => {
  let stage: Stage;
  let ticketId: string;
  beforeAll(async () => {
    stage = await openStage();
    const technician = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    const open = await technician.get<{ items: { id: string }[] }>('/tickets?assigneeId=me&state=open');
    ticketId = expectStatus(open, 200).items[0]?.id ?? '';
    for (const words of hostile) await technician.command(ticketId, { type: 'note', text: words });
    const waivers = completenessItems.map((item) => ({ item, reason: hostile[0] ?? '' }));
    await technician.command(ticketId, { type: 'escalate', question: hostile[1] ?? '', waivers });
  });
  afterAll(() => stage.close());

  const accepted = hostile.map((words) => text.parse(words));

  /** Of what was written: what the screen does not show as it was accepted. */
  async function lostOn(page: Page, language: string, path: string): Promise<string[]> {
    await page.evaluate(`localStorage.setItem('halfsplit-language', '${language}')`);
    await page.goto(path);
    await page.getByText('=1+1').first().waitFor({ state: 'attached' });
    const shown: string = await page.evaluate('document.body.textContent');
    return accepted.filter((words) => !shown.includes(words));
  }
  const isHurt = (page: Page): Promise<unknown> =>
    page.evaluate('window.hostile ?? document.title.includes("Elsewhere")');

  it('are fifty, each different', () => {
    expect(new Set(accepted).size).toBe(50);
  });

  it.each([
    ['oda', 'desk', '/app/tickets/'],
    ['brask', 'phone', '/app/visits/'],
    ['pim', 'desk', '/app/cases/'],
  ] as const)('are shown to %s as they were accepted, in English and German', async (name, size, path) => {
    const page = await stage.signedIn(name, size);
    const failures: string[] = [];
    page.on('pageerror', (error) => failures.push(String(error)));
    page.on('dialog', (dialog) => failures.push(dialog.message()));
    for (const language of ['en', 'de']) {
      expect(await lostOn(page, language, path + ticketId), language).toEqual([]);
      expect(await isHurt(page)).toBe(false);
    }
    expect(failures).toEqual([]);
  });
});
