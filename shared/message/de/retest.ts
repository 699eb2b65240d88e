import type { retestCodes } from '../codes/retest.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';

const shown = (value: string | null, say: Say): string => (value === null ? 'nichts' : say.quoted(value));
const otherTrigger =
  'Der Nachtest hatte einen anderen Auslöser als die Beobachtung vor der Änderung; beide lassen sich nicht vergleichen.';
const otherMode =
  'Das eine wurde über die Zeit beobachtet, das andere mit einem Auslöser; beide lassen sich nicht vergleichen.';
const notComparable = 'Ob er seltener kommt, lässt sich nicht sagen.';
const repeat = 'Wiederhol den Nachtest so, wie der Fehler nachgestellt wurde.';
const inBursts = (chance: string): string =>
  `Vor der Änderung kam der Fehler in Schüben (unabhängige Vorkommen liegen mit ${chance} so ungleich), also ist die übliche Länge des Nachtests zu kurz.`;

export const retestDe: Sentences<typeof retestCodes> = {
  nothingWatchedYet: () => 'Noch wurde nichts beobachtet.',
  cannotBeJudged: () => 'Das lässt sich nicht beurteilen.',
  restsOnReports: () =>
    'Das beruht auf dem, was über Tage gemeldet oder protokolliert wurde; beobachtet hat niemand, und es zählt weniger.',
  cameWhileUnattended: ({ days, reported, logged }, say) =>
    `Während niemand beobachtete, über ${say.number(days, 1)} Tage, kam der Fehler: ${reported} gemeldet, ${logged} in Protokollen.`,
  nobodyCouldReport: () =>
    'In diesen Tagen war kein Tagebuch offen und wurde kein Protokoll gelesen, sodass ihre Ruhe nichts sagt.',
  quietDaysSayNothing: ({ days }, say) =>
    `Ruhe über ${say.number(days, 1)} Tage; wie oft er vorher kam, ist nicht bekannt, sodass das noch nichts sagt.`,
  quietDays: ({ days, chance }, say) =>
    `Ruhe über ${say.number(days, 1)} Tage, in denen er gemeldet werden konnte. Hätte sich nichts geändert, käme das mit ${say.percent(chance)} durch Zufall vor.`,
  firmwareMoved: ({ device, before, after }, say) =>
    `An ${say.place(device, 'dative')} war die Firmware ${shown(before, say)} und ${after === null ? 'ließ sich nachher nicht lesen' : `ist ${shown(after, say)}`}: Der Änderung lässt sich nichts zuschreiben.`,
  firmwareUnread: ({ devices }, say) =>
    `An ${say.and(devices.map((device) => say.place(device, 'dative')))} wurde die Firmware nicht gelesen, als die Änderung drinblieb: Ein Update inzwischen würde man nicht sehen.`,
  otherTriggerStillThere: () => `${otherTrigger} ${notComparable}`,
  otherTriggerRepeat: () => `${otherTrigger} ${repeat}`,
  otherModeStillThere: () => `${otherMode} ${notComparable}`,
  otherModeRepeat: () => `${otherMode} ${repeat}`,
  seenDuringRetest: ({ occurrences }, say) =>
    `Der Fehler kam ${say.times(occurrences)} während des Nachtests: Er ist noch da.`,
  seenWithChangeInPlace: ({ occurrences }, say) =>
    `Der Fehler kam ${say.times(occurrences)} während des Nachtests: Er ist da, obwohl die Änderung eingebaut ist.`,
  baselineRateUnknown: () => 'Vor der Änderung wurde er nicht gesehen; wie oft er da kam, ist nicht bekannt.',
  notSeenBeforeChange: () =>
    'Der Fehler wurde vor der Änderung nicht gesehen; dass er jetzt ausbleibt, sagt also nichts. Stell ihn zuerst nach.',
  noQuietSettles: () => 'Keine noch so lange ruhige Beobachtung würde das entscheiden.',
  noTriesSettle: () => 'Keine Zahl von Versuchen würde das entscheiden.',
  quietMinutes: ({ watched, before, watchedBefore }, say) =>
    `${say.minutesWatched(watched)} ohne den Fehler, vorher ${say.times(before)} in ${say.minutesWatched(watchedBefore)}.`,
  quietTries: ({ tries, failedBefore, triesBefore }) =>
    `Keiner von ${tries} Versuchen schlug fehl, vorher ${failedBefore} von ${triesBefore}.`,
  noLooksSettle: () => 'Keine Zahl von Blicken würde das entscheiden.',
  goodLooks: ({ looks, badBefore, looksBefore }, say) =>
    `Bei ${say.plural(looks, 'einem Blick', `${looks} Blicken`)} nicht da, vorher bei ${badBefore} von ${looksBefore}.`,
  lookMore: ({ remaining, total }) =>
    `Sieh noch ${remaining}-mal hin (insgesamt ${total} gute Blicke hintereinander).`,
  stillThereAtLook: ({ bad, looks, badBefore, looksBefore }) =>
    `Der Fehler ist noch da: mit der Änderung bei ${bad} von ${looks} Blicken, vorher bei ${badBefore} von ${looksBefore}.`,
  sureSoFarLook: ({ sure, remaining }, say) =>
    `Inzwischen ${say.percent(sure)} sicher, dass die Änderung wirkt; noch ${say.plural(remaining, 'ein guter Blick', `${remaining} gute Blicke hintereinander`)}, um es behoben zu nennen.`,
  needsTrigger: ({ trigger }, say) =>
    `Der Fehler kommt ${say.term('patternTrigger', trigger)}; bloßes Warten ohne den Fehler sagt darum nichts: Versuch genau das, und zähl die Versuche.`,
  otherContentPlayed: () =>
    'Es lief etwas anderes als das, womit sich der Fehler zeigt; dass er ausblieb, sagt nichts.',
  contentNotSaid: () =>
    'Niemand hat gesagt, ob das lief, womit sich der Fehler zeigt; dass er ausblieb, sagt nichts.',
  timeOnNotSaid: () =>
    'Niemand hat gesagt, wie lange die Geräte schon an waren, und der Fehler kommt nur, wenn sie warm sind: Dass er ausblieb, sagt nichts.',
  notWarmYet: ({ after }, say) =>
    `Der Fehler kommt erst nach ${say.minutesNeeded(after)}, beobachtet wurde davor: Dass er ausblieb, sagt nichts.`,
  onlyWarmMinutes: ({ after }, say) =>
    `Es zählen nur die Minuten ab ${say.minutesNeeded(after)} nach dem Einschalten.`,
  burstsCounted: ({ occurrences, bursts }, say) =>
    `Er kam ${say.times(occurrences)} in ${bursts} ${say.plural(bursts, 'Schub', 'Schüben')}; jeder Schub zählt einmal, denn was in einem kommt, kommt zusammen.`,
  cameTogether: ({ occurrences, independent }, say) =>
    `Vorher kam er ${say.times(occurrences)}, zum Teil kurz hintereinander: Das zählt wie etwa ${independent}, die von selbst kamen; der Nachtest dauert darum länger.`,
  watchMore: ({ remaining, total }, say) =>
    `Beobachte noch ${say.minutesNeeded(remaining)} ohne den Fehler (insgesamt ${say.minutesNeeded(total)}).`,
  tryMore: ({ remaining, total }) =>
    `Versuch es noch ${remaining}-mal ohne Fehlschlag (insgesamt ${total} hintereinander).`,
  chanceBelowLimit: ({ chance, limit }, say) =>
    `Hätte sich nichts geändert, käme das mit ${say.percent(chance)} durch Zufall vor; die Grenze ist ${say.percent(limit)}.`,
  chanceAboveLimit: ({ chance, limit }, say) =>
    `Hätte sich nichts geändert, käme das mit ${say.percent(chance)} durch Zufall vor, mehr als die Grenze von ${say.percent(limit)}.`,
  stillThereInTime: ({ now, watched, before, watchedBefore }, say) =>
    `Der Fehler ist noch da: ${say.times(now)} in ${say.minutesWatched(watched)} mit der Änderung, vorher ${say.times(before)} in ${say.minutesWatched(watchedBefore)}.`,
  stillThereInTries: ({ failed, tries, failedBefore, triesBefore }) =>
    `Der Fehler ist noch da: Mit der Änderung schlugen ${failed} von ${tries} Versuchen fehl, vorher ${failedBefore} von ${triesBefore}.`,
  comesLessOften: ({ chance }, say) =>
    `Er kommt deutlich seltener (durch bloßen Zufall mit ${say.percent(chance)}), aber seltener ist nicht behoben.`,
  comesMoreOften: ({ chance }, say) =>
    `Er kommt deutlich öfter als vorher (durch bloßen Zufall mit ${say.percent(chance)}).`,
  rateNotComparable: () => 'Ob er seltener kommt, lässt sich daraus nicht sagen.',
  moreOftenWithChange: () =>
    'Mit der Änderung kommt der Fehler öfter: Prüf, ob die Änderung selbst richtig gemacht wurde.',
  cameInBursts: ({ chance }, say) => inBursts(say.percent(chance)),
  cameInBurstsWatch: ({ chance, total }, say) =>
    `${inBursts(say.percent(chance))} Um das zu berücksichtigen, beobachte insgesamt ${say.minutesNeeded(total)}.`,
  triesBeforeNotWhole: () => 'Die Versuche vor der Änderung sind keine ganzen Zahlen.',
  triesOfRetestNotWhole: () => 'Die Versuche des Nachtests sind keine ganzen Zahlen.',
  moreFailedThanTriedBefore: () =>
    'In der Beobachtung vor der Änderung schlugen mehr Versuche fehl, als gemacht wurden.',
  moreFailedThanTriedInRetest: () => 'Im Nachtest schlugen mehr Versuche fehl, als gemacht wurden.',
  occurrencesBeforeNotWhole: () => 'Die Vorkommen vor der Änderung sind keine ganze Zahl.',
  occurrencesOfRetestNotWhole: () => 'Die Vorkommen im Nachtest sind keine ganze Zahl.',
  lengthBeforeUnknown: () => 'Die Länge der Beobachtung vor der Änderung ist nicht bekannt.',
  lengthOfRetestUnknown: () => 'Die Länge des Nachtests ist nicht bekannt.',
  watchBeforeHasNoLength: () => 'Die Beobachtung vor der Änderung hat keine Länge.',
  retestHasNoLength: () => 'Der Nachtest hat keine Länge.',
  sureEnough: ({ sure }, say) =>
    `${say.percent(sure)} sicher, dass die Änderung wirkt: genug, um es behoben zu nennen.`,
  sureSoFarWatch: ({ sure, remaining }, say) =>
    `Inzwischen ${say.percent(sure)} sicher, dass die Änderung wirkt; noch ${say.minutesNeeded(remaining)} ohne den Fehler, um es behoben zu nennen.`,
  sureSoFarTry: ({ sure, remaining }, say) =>
    `Inzwischen ${say.percent(sure)} sicher, dass die Änderung wirkt; noch ${say.plural(remaining, 'ein guter Versuch', `${remaining} gute Versuche hintereinander`)}, um es behoben zu nennen.`,
  settingNotDeclared: ({ device, setting, before, after }, say) =>
    `An ${say.place(device, 'dative')} ging ${say.quoted(setting)} von ${shown(before, say)} auf ${shown(after, say)}, ohne angesagt zu sein.`,
  settingNotAsDeclared: ({ device, setting, declared, before, after }, say) =>
    `An ${say.place(device, 'dative')} war für ${say.quoted(setting)} angesagt: ${say.quoted(declared)}; es war ${shown(before, say)} und ist ${shown(after, say)}.`,
};
