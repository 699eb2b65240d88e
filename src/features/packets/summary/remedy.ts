import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Remedy } from '../../../../shared/contract/triage.ts';
import { wordsOf } from './tongue.ts';

/** What the remedy is, and what kind where that limits it. */
export function remedyWords(file: CaseFile, { kind, what }: Remedy): string {
  const t = wordsOf(file).standing;
  switch (kind) {
    case 'permanent':
      return what;
    case 'workaround':
      return t.workaround(what);
    case 'noFaultFound':
      return t.noFaultFound(what);
    case 'onSuspicion':
      return t.onSuspicion(what);
  }
}
