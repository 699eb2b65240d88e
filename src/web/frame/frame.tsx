import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import { isConnected } from '../api/connection.ts';
import { sessionState } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Lapsed } from '../parts/lapsed.tsx';
import { Notice } from '../parts/notice.tsx';
import type { MenuEntry } from '../routing/role-screens.ts';
import { isOutboxRead, outbox, stoppedEntries } from '../store/outbox.ts';
import { frameWords } from '../words/frame.ts';
import { loadNewerVersion, newerVersion } from './shell.ts';

/** What is around every screen: the menu, what waits to be sent, and whether there is a connection. */
export function Frame({ menu, children }: { menu: readonly MenuEntry[]; children: ComponentChildren }) {
  const t = frameWords();
  const { path } = useLocation();
  const entries = [
    ...menu.map(({ href, label }) => ({ href, label: label() })),
    { href: '/app/settings', label: t.settings },
  ];
  return (
    <div class="frame">
      <a class="frame-skip" href="#content">
        {t.skip}
      </a>
      <header class="frame-head">
        <a class="frame-name" href="/">
          Halfsplit
        </a>
        <div class="frame-state">
          <Connection />
          <OutboxLink />
        </div>
      </header>
      <nav class="frame-menu" aria-label={t.menu}>
        <ul>
          {entries.map(({ href, label }) => (
            <li key={href}>
              <a
                href={href}
                {...(path === href || path.startsWith(`${href}/`) ? { 'aria-current': 'page' as const } : {})}
              >
                {label}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <main class="frame-content" id="content" tabIndex={-1}>
        {sessionState.value.kind === 'lapsed' && path !== '/app/sign-in' && <Lapsed text={t.lapsed} />}
        {newerVersion.value !== null && (
          <Notice>
            <span>{t.newerVersion}</span>
            <div>
              <Button onClick={loadNewerVersion}>{t.loadNewer}</Button>
            </div>
          </Notice>
        )}
        {children}
      </main>
    </div>
  );
}

function Connection() {
  const t = frameWords();
  const off = !isConnected.value;
  return (
    <span role="status" class={off ? 'badge badge-caution' : 'for-readers-only'} title={t.offlineLong}>
      {off && (
        <>
          <span aria-hidden="true">▲</span> {t.offline}
        </>
      )}
    </span>
  );
}

function OutboxLink() {
  const t = frameWords();
  const waiting = outbox.value.length;
  const stopped = stoppedEntries.value.length;
  const [tone, sign, text] = !isOutboxRead.value
    ? ['', '…', '']
    : stopped > 0
      ? ['badge-refusal', '✕', t.outboxStopped(stopped)]
      : waiting > 0
        ? ['badge-caution', '↑', t.outboxWaiting(waiting)]
        : ['badge-good', '✓', t.outboxEmpty];
  return (
    <a class={`badge ${tone}`} href="/app/outbox">
      <span aria-hidden="true">{sign}</span>
      <span class="for-readers-only">{t.outbox}: </span>
      {text}
    </a>
  );
}
