import { typeOfKind } from '../../../shared/contract/problem-type.ts';
import { Html, html } from '../../page/html.ts';
import { section, table } from '../../page/parts.ts';
import { style } from '../../page/style.ts';
import type { Reference } from './reference.ts';

const code = (text: string): Html => html`<code>${text}</code>`;
const codes = (texts: readonly string[]): Html =>
  html`${texts.map((text, at) => html`${at > 0 && ', '}${code(text)}`)}`;

const routeTable = ({ routes }: Reference) =>
  table(
    ['Route', 'What', 'For'],
    routes.map(({ method, path, summary, roles }) => [
      code(`${method} ${path}`),
      summary,
      roles === null ? 'anyone' : roles.join(', '),
    ]),
  );

const marks = ({ roles: all }: Reference, allowed: readonly string[]): string[] =>
  all.map((role) => (allowed.includes(role) ? 'yes' : ''));

const permissionTable = (reference: Reference) =>
  table(
    ['May', ...reference.roles],
    reference.permissions.map(({ permission, roles }) => [permission, ...marks(reference, roles)]),
  );

const wayText = ({ from, to }: Reference['commands'][number]['ways'][number]): Html =>
  html`<div>${from.length === 0 ? 'every state' : codes(from)}${to !== null && html` → ${code(to)}`}</div>`;

const commandTable = (reference: Reference) =>
  table(
    ['Command', ...reference.roles, 'In the states, and what it leads to'],
    reference.commands.map(({ command, roles, ways }) => [
      code(command),
      ...marks(reference, roles),
      html`${ways.map(wayText)}`,
    ]),
  );

const problemTable = ({ problems }: Reference) =>
  table(
    ['Type', 'Status', 'Title'],
    problems.map(({ kind, status, title }) => [
      html`<a href="${typeOfKind(kind)}">${code(typeOfKind(kind))}</a>`,
      status,
      title,
    ]),
  );

const ownStyle = 'body { max-width: 76rem; } code { font-size: .92em; overflow-wrap: break-word; }';

/** The reference to read and print: one HTML page that runs nothing. */
export const referencePage = (reference: Reference): string =>
  html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Halfsplit: reference</title>
<style>${new Html(style + ownStyle)}</style>
</head>
<body>
<h1>Halfsplit: reference</h1>
<p>Routes, roles, ticket commands and problems of the server that shows this page. Every field of every request and
reply is in <a href="/openapi.json">the OpenAPI 3.1 description</a>, also <a href="/reference/openapi/">as pages to
unfold</a>. This page as JSON: the same address, asked for <code>application/json</code>.</p>
<main>
${section(
  'routes',
  'Routes',
  html`<p>Every write outside <code>/auth</code> and <code>/uploads</code> carries an <code>Idempotency-Key</code> of 8 to
  200 visible characters: the same key gives the same reply, the same key with another request is a problem. Uploads
  follow the tus protocol, whose offsets serve the same end. Documents carry an <code>ETag</code>; every
  <code>PUT</code> and <code>DELETE</code> of them needs it in <code>If-Match</code>. Times are UTC, ISO 8601.</p>`,
  routeTable(reference),
)}
${section('roles', 'Who may do what', permissionTable(reference))}
${section(
  'commands',
  'Ticket commands',
  html`<p>Sent to <code>POST /tickets/{id}/commands</code>. A technician sends those that are for technicians and admins
  alone to tickets that are assigned to them, and takes others over first. A state in the table takes its command in all
  states inside it too, where the rules of the ticket allow it: <code>allowedNow</code> of a ticket says which it takes
  now.</p>`,
  commandTable(reference),
)}
${section(
  'problems',
  'Problems',
  html`<p>Whatever is refused is answered with a problem document (RFC 9457). Its <code>type</code> never changes its
  meaning.</p>`,
  problemTable(reference),
)}
</main>
</body>
</html>
`.markup;
