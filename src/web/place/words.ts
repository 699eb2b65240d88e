import type { Finding } from '../../../shared/contract/chain.ts';
import { wordsOf } from '../words/language.ts';

type PlaceWords = {
  close: string;
  budget: string;
  findings: string;
  severities: Record<Finding['severity'], string>;
  version: (version: number) => string;
  firstVersion: string;
  nothingNew: string;
  showVersion: (version: number) => string;
  hideVersion: string;
  asItWas: (version: number, when: string) => string;
  differs: (from: number, to: number) => string;
  same: string;
  leftAs: (version: number) => string;
  versions: string;
  compareFrom: string;
  compareTo: string;
};
const en: PlaceWords = {
  close: 'Close',
  budget: 'What the cable has to carry',
  findings: 'Findings',
  severities: { mustFix: 'must be fixed', shouldFix: 'should be fixed', note: 'worth knowing' },
  version: (version) => `Version ${version}`,
  firstVersion: 'First description',
  nothingNew: 'A part was replaced by one of the same description.',
  showVersion: (version) => `Show version ${version}`,
  hideVersion: 'Hide it',
  asItWas: (version, when) => `The chain as described from ${when} on, version ${version}`,
  differs: (from, to) => `What differs between version ${from} and version ${to}`,
  same: 'Nothing differs.',
  leftAs: (version) => `As left: version ${version}`,
  versions: 'All versions and their times',
  compareFrom: 'From',
  compareTo: 'To',
};
const de: PlaceWords = {
  close: 'Schließen',
  budget: 'Was das Kabel leisten muss',
  findings: 'Befunde',
  severities: { mustFix: 'muss behoben werden', shouldFix: 'sollte behoben werden', note: 'gut zu wissen' },
  version: (version) => `Fassung ${version}`,
  firstVersion: 'Erste Beschreibung',
  nothingNew: 'Ein Teil wurde durch eines mit derselben Beschreibung ersetzt.',
  showVersion: (version) => `Fassung ${version} zeigen`,
  hideVersion: 'Ausblenden',
  asItWas: (version, when) => `Die Kette, wie sie ab ${when} beschrieben war, Fassung ${version}`,
  differs: (from, to) => `Was sich zwischen Fassung ${from} und Fassung ${to} unterscheidet`,
  same: 'Nichts unterscheidet sich.',
  leftAs: (version) => `Wie verlassen: Fassung ${version}`,
  versions: 'Alle Fassungen mit ihren Zeiten',
  compareFrom: 'Von',
  compareTo: 'Bis',
};
export const knownWords = wordsOf({ en, de });
