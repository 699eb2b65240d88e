import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import { Screen } from '../parts/screen.tsx';
import { adminWords } from './words.ts';
import './admin.css';

/** One section of what the firm sets for itself, with the way to the others. */
export function SectionScreen({ title, children }: { title: string; children: ComponentChildren }) {
  const t = adminWords();
  const { path } = useLocation();
  const sections = [
    ['/app/numbers', t.general],
    ['/app/numbers/firmware', t.firmware],
    ['/app/numbers/fault-model', t.figures],
    ['/app/numbers/logs', t.recognition],
    ['/app/numbers/changes', t.ownChanges],
    ['/app/numbers/usage', t.usage],
    ['/app/numbers/audit-log', t.auditLog],
    ['/app/numbers/export', t.take],
  ] as const;
  return (
    <Screen title={title}>
      <nav class="sections not-printed" aria-label={t.sections}>
        <ul>
          {sections.map(([href, label]) => (
            <li key={href}>
              <a href={href} {...(path === href ? { 'aria-current': 'page' as const } : {})}>
                {label}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {children}
    </Screen>
  );
}
