import type { Finding } from '../../../shared/contract/chain.ts';
import { wordsOf } from '../words/language.ts';

type PlaceWords = {
  close: string;
  budget: string;
  findings: string;
  severities: Record<Finding['severity'], string>;
};
const en: PlaceWords = {
  close: 'Close',
  budget: 'What the cable has to carry',
  findings: 'Findings',
  severities: { mustFix: 'must be fixed', shouldFix: 'should be fixed', note: 'worth knowing' },
};
const de: PlaceWords = {
  close: 'Schließen',
  budget: 'Was das Kabel leisten muss',
  findings: 'Befunde',
  severities: { mustFix: 'muss behoben werden', shouldFix: 'sollte behoben werden', note: 'gut zu wissen' },
};
export const knownWords = wordsOf({ en, de });
