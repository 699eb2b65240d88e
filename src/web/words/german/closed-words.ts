import { deTerms as germanTerms } from '../../../../shared/message/de/terms.ts';
import { roles } from './places.ts';

/** Which side of a device, before its name. */
export const sideWords: Readonly<Record<string, string>> = { upstream: 'vor', downstream: 'hinter' };

/** Words that stand in few templates, each in a few forms: the kind in the template, and its German by the English. */
export const closedWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  devices: { devices: 'Geräte', device: 'Gerät' },
  levels: { levels: 'Ebenen', level: 'Ebene' },
  side: sideWords,
  role: roles,
  member: germanTerms.memberRole,
  target: { link: 'einer Verbindung', device: 'einem Gerät', port: 'einer Buchse', chain: 'einer Kette' },
  direction: { input: 'Eingang', output: 'Ausgang' },
  verdict: { cleared: 'behoben', persists: 'besteht', inconclusive: 'sagt nichts' },
  state: {
    ...germanTerms.state,
    'escalated.waiting': germanTerms.state.escalated,
    'escalated.underReview': `${germanTerms.state.escalated}, in Arbeit`,
    'escalated.moreRequested': `${germanTerms.state.escalated}, mit Fragen an dich`,
  },
  status: { declared: 'angesagt', applied: 'eingebaut', judged: 'bewertet' },
  priority: { low: 'niedrig', normal: 'normal', high: 'hoch', urgent: 'dringend' },
  menu: { stayed: 'blieb', vanished: 'verschwand' },
  remedy: { permanent: 'auf Dauer', workaround: 'Umweg', noFaultFound: 'kein Fehler gefunden' },
  evidence: germanTerms.evidenceKind,
  symptom: {
    noPicture: 'kein Bild',
    dropOuts: 'Aussetzer',
    sparkles: 'Glitzern',
    noHdrOrWrongColour: 'kein HDR oder falsche Farben',
    wrongRateOrResolution: 'falsche Bildrate oder Auflösung',
    contentProtectionMessage: 'Meldung zum Kopierschutz',
    soundOnly: 'nur Ton',
  },
  changed: {
    cable: 'ein Kabel',
    device: 'ein Gerät',
    firmware: 'Firmware',
    setting: 'eine Einstellung',
    move: 'umgestellt',
    buildingWork: 'Bauarbeiten',
    other: 'etwas anderes',
    nothing: 'nichts',
    notKnown: 'nicht bekannt',
  },
  thing: {
    'a change': 'eine Änderung',
    'a watch': 'eine Beobachtung',
    'an occurrence': 'ein Vorkommen',
    'an item of evidence': 'einen Beleg',
    'a request': 'eine Frage',
  },
  lack: {
    request: 'keine Frage',
    occurrence: 'kein Vorkommen',
    watch: 'keine Beobachtung',
    log: 'kein Protokoll',
  },
};
