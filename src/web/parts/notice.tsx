import type { ComponentChildren } from 'preact';
import { useIntoSight } from './into-sight.ts';

export type Tone = 'plain' | 'caution' | 'refusal' | 'good';
/** A sign beside the colour, so that the tone is there without it. */
export const signs: Record<Tone, string> = { plain: 'i', caution: '▲', refusal: '✕', good: '✓' };

/** Something to know on this screen. `announce` has it read out when it appears. */
export function Notice({
  tone = 'plain',
  announce = false,
  children,
}: {
  tone?: Tone;
  announce?: boolean;
  children: ComponentChildren;
}) {
  const part = useIntoSight<HTMLDivElement>(announce && tone !== 'good');
  return (
    <div
      ref={part}
      class={`notice notice-${tone}`}
      {...(announce ? { role: tone === 'refusal' ? 'alert' : 'status' } : {})}
    >
      <span class="notice-sign" aria-hidden="true">
        {signs[tone]}
      </span>
      <div class="stack">{children}</div>
    </div>
  );
}

/** A short word on the state of something, with a sign. */
export function Badge({ tone = 'plain', children }: { tone?: Tone; children: ComponentChildren }) {
  return (
    <span class={`badge badge-${tone}`}>
      {tone !== 'plain' && <span aria-hidden="true">{signs[tone]}</span>}
      {children}
    </span>
  );
}
