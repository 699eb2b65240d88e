import type { EvidenceRef } from '../../shared/contract/evidence.ts';
import { type LinkView, linkViews } from '../../shared/contract/evidence-names.ts';

/** The views of a cable of which there is no photo that counts. */
export function viewsLacking(evidence: readonly EvidenceRef[], linkId: string): LinkView[] {
  const shown = new Set(
    evidence
      .filter(({ kind, tie, withdrawn }) => kind === 'photo' && withdrawn === null && tie.linkId === linkId)
      .map(({ tie }) => tie.shows),
  );
  return linkViews.filter((view) => !shown.has(view));
}
