import { createHash } from 'node:crypto';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { cameBackAnswers, lastedAnswers } from '../../../shared/contract/diary-names.ts';
import type { LanguageTag } from '../../../shared/contract/language-names.ts';
import { dayAndTime } from '../../../shared/message/figures.ts';
import { Html, html } from '../../page/html.ts';
import { list } from '../../page/parts.ts';
import { style } from '../../page/style.ts';
import type { SentReport } from './reports.ts';
import { wordsFor } from './words.ts';

/** Targets for a thumb, and one that is found in the dark. */
const ownStyle = `
body { max-width: 34rem; }
button { font: inherit; padding: .8rem 1rem; min-height: 3rem; border: 1px solid var(--quiet); border-radius: .5rem;
  background: var(--tint); color: var(--ink); }
button.main { width: 100%; min-height: 7rem; font-size: 1.5rem; font-weight: 600; background: var(--accent);
  color: var(--paper); border-color: var(--accent); }
button:focus-visible, input:focus-visible, summary:focus-visible { outline: 3px solid var(--warn); outline-offset: 2px; }
input { font: inherit; min-height: 3rem; padding: .4rem .6rem; max-width: 100%; }
input[type=radio] { min-height: 1.5rem; width: 1.5rem; vertical-align: middle; }
label { display: block; padding: .45rem 0; } fieldset { border: 1px solid var(--line); margin: .6rem 0; }
summary { padding: .8rem 0; cursor: pointer; }
`;
const wholeStyle = style + ownStyle;

/** Nothing runs on these pages; their one style is named by its hash (CSP Level 3, section 2.3.1). */
export const policy = [
  "default-src 'none'",
  `style-src 'sha256-${createHash('sha256').update(wholeStyle).digest('base64')}'`,
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

const page = (language: LanguageTag, title: string, content: Html): string =>
  html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${title}</title>
<style>${new Html(wholeStyle)}</style>
</head>
<body>
<main>
<h1>${title}</h1>
${content}
</main>
</body>
</html>
`.markup;

export type DiaryView = {
  readonly language: LanguageTag;
  /** Zone that its moments are told in. */
  readonly zone: string;
  readonly code: string;
  readonly until: Date;
  /** The id that the next report will bear, so that a double tap is one. */
  readonly nextId: string;
  readonly sent: readonly SentReport[];
  readonly say:
    | { readonly kind: 'nothing' | 'answered' | 'removed' | 'timeUnknown' | 'tooMuch' }
    | { readonly kind: 'sent'; readonly report: SentReport };
};

/** The client's page: one tap that says that the fault came, and what else they may say or take back. */
export function diaryPage(view: DiaryView): string {
  const t = wordsFor(view.language);
  const action = addressOf(addresses.diaryPage, { code: view.code });
  return page(
    view.language,
    t.title,
    html`${said(view)}
<p>${t.ask}</p>
<form method="post" action="${action}">
<input type="hidden" name="report" value="${view.nextId}">
<button class="main" name="what" value="now">${t.now}</button>
</form>
<details${view.say.kind === 'timeUnknown' && new Html(' open')}><summary>${t.earlier}</summary>
<form method="post" action="${action}">
<input type="hidden" name="report" value="${view.nextId}">
<label>${t.when} <input type="datetime-local" name="at" required></label>
<button name="what" value="earlier">${t.sendEarlier}</button>
</form></details>
<p>${t.leaveAlone}</p>
${sentSoFar(view, action)}
<p class="quiet">${t.whoReads(momentIn(view, view.until.toISOString()))}</p>
<p class="quiet">${t.whatIsSent}</p>`,
  );
}

function said(view: DiaryView): Html | null {
  const t = wordsFor(view.language);
  switch (view.say.kind) {
    case 'nothing':
      return null;
    case 'answered':
      return html`<p class="box" role="status">${t.moreKept}</p>`;
    case 'removed':
      return html`<p class="box" role="status">${t.removed}</p>`;
    case 'timeUnknown':
      return html`<p class="box warn" role="alert">${t.timeUnknown}</p>`;
    case 'tooMuch':
      return html`<p class="box warn" role="alert">${t.tooMuch}</p>`;
    case 'sent':
      return html`<p class="box" role="status">${t.thanks(momentIn(view, view.say.report.occurredAt))}</p>
${questions(view, view.say.report)}`;
  }
}

function questions(view: DiaryView, { id }: SentReport): Html {
  const t = wordsFor(view.language);
  const choices = (
    name: string,
    values: readonly string[],
    words: Readonly<Record<string, string>>,
  ): Html[] =>
    values.map(
      (value) => html`<label><input type="radio" name="${name}" value="${value}"> ${words[value]}</label>`,
    );
  return html`<h2>${t.more}</h2>
<form method="post" action="${addressOf(addresses.diaryPage, { code: view.code })}">
<input type="hidden" name="report" value="${id}">
<fieldset><legend>${t.howLong}</legend>${choices('lasted', lastedAnswers, t.lasted)}</fieldset>
<fieldset><legend>${t.byItself}</legend>${choices('cameBack', cameBackAnswers, t.cameBack)}</fieldset>
<button name="what" value="answers">${t.sendMore}</button>
</form>
<hr>`;
}

function sentSoFar(view: DiaryView, action: string): Html | null {
  const t = wordsFor(view.language);
  if (view.sent.length === 0) return null;
  return html`<h2>${t.sent}</h2>
${list(view.sent.map(({ occurredAt }) => momentIn(view, occurredAt)))}
<details><summary>${t.remove}</summary><p>${t.removeWhat}</p>
<form method="post" action="${action}"><button name="what" value="delete">${t.removeYes}</button></form></details>`;
}

const locales = { en: 'en-GB', de: 'de-DE' } as const;
const momentIn = ({ language, zone }: Pick<DiaryView, 'language' | 'zone'>, moment: string): string =>
  dayAndTime(moment, locales[language], zone);

/** Where no diary is open under a code. It reads the same whether there never was one, or there is none any more. */
export function notOpenPage(language: LanguageTag): string {
  const t = wordsFor(language);
  return page(language, t.notOpen, html`<p>${t.notOpenWhat}</p>${codeForm(language)}`);
}

/** Where a code that was told is typed in. */
export function entryPage(language: LanguageTag): string {
  return page(language, wordsFor(language).enterCode, codeForm(language));
}

const codeForm = (language: LanguageTag): Html => {
  const t = wordsFor(language);
  return html`<form method="get" action="${addresses.diaryEntry}">
<label>${t.code} <input name="code" required maxlength="40" autocomplete="off" autocapitalize="characters" spellcheck="false"></label>
<button>${t.open}</button>
</form>`;
};

/** Where something went wrong on our side, or too much was asked. */
export function failedPage(language: LanguageTag, isTooOften: boolean): string {
  const t = wordsFor(language);
  return isTooOften
    ? page(language, t.tooMany, html`<p>${t.tooManyWhat}</p>`)
    : page(language, t.failed, html`<p>${t.failedWhat}</p>`);
}
