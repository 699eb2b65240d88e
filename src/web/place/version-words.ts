import { wordsOf } from '../words/language.ts';

type VersionWords = {
  version: (version: number) => string;
  firstVersion: string;
  nothingNew: string;
  showVersion: (version: number) => string;
  hideVersion: string;
  asItWas: (version: number, when: string) => string;
  differs: (from: number, to: number) => string;
  same: string;
  leftAs: (version: number) => string;
  compareFrom: string;
  compareTo: string;
};
const en: VersionWords = {
  version: (version) => `Version ${version}`,
  firstVersion: 'First description',
  nothingNew: 'A part was replaced by one of the same description.',
  showVersion: (version) => `Show version ${version}`,
  hideVersion: 'Hide it',
  asItWas: (version, when) => `The chain as described from ${when} on, version ${version}`,
  differs: (from, to) => `What differs between version ${from} and version ${to}`,
  same: 'Nothing differs.',
  leftAs: (version) => `As left: version ${version}`,
  compareFrom: 'From',
  compareTo: 'To',
};
const de: VersionWords = {
  version: (version) => `Fassung ${version}`,
  firstVersion: 'Erste Beschreibung',
  nothingNew: 'Ein Teil wurde durch eines mit derselben Beschreibung ersetzt.',
  showVersion: (version) => `Fassung ${version} zeigen`,
  hideVersion: 'Ausblenden',
  asItWas: (version, when) => `Die Kette, wie sie ab ${when} beschrieben war, Fassung ${version}`,
  differs: (from, to) => `Was sich zwischen Fassung ${from} und Fassung ${to} unterscheidet`,
  same: 'Nichts unterscheidet sich.',
  leftAs: (version) => `Wie verlassen: Fassung ${version}`,
  compareFrom: 'Von',
  compareTo: 'Bis',
};
/** Words of a chain's versions, and of what differs between them. */
export const versionWords = wordsOf({ en, de });
