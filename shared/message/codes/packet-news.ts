import type { CodeTable } from '../values.ts';

const change = { change: 'changeKind', place: 'place', verdict: 'verdict?' } as const;

/** What a version of a case packet says that the one before did not; beside these stand some of what the log says. */
export const packetNewsCodes = {
  'news/requestAnswered': { request: 'text', answer: 'text' },
  'news/evidenceAdded': { item: 'message' },
  'news/evidenceWithdrawn': { item: 'message', reason: 'text' },
  'news/evidenceItem': {
    kind: 'evidenceKind',
    of: 'place?',
    reading: 'message?',
    description: 'text?',
    fileName: 'name?',
  },
  'news/levelRead': { level: 'name' },
  'news/noteRead': { text: 'text' },
  'news/settingsCounted': { settings: 'count' },
  'news/settingsRead': { settings: 'message[]' },
  'news/settingRead': { setting: 'name', value: 'name' },
  'news/watched': { watches: 'count', seen: 'count' },
  'news/reported': { reports: 'count' },
  'news/sideFound': { device: 'place', side: 'side' },
  'news/changeDeclared': change,
  'news/changeInPlace': change,
  'news/changeJudged': change,
  'news/changePutBack': change,
  'news/changeKept': change,
  'news/changeWithdrawn': change,
  'news/waited': { kind: 'waitingKind', what: 'text' },
  'news/culpritNamed': { place: 'place' },
  'news/culpritWithdrawn': {},
  'news/remedyChosen': { what: 'text' },
  'news/noteBy': { name: 'name', text: 'text' },
  'news/noLongerMissing': { item: 'completenessItem' },
  'news/waivedNow': { item: 'completenessItem' },
} as const satisfies CodeTable;
