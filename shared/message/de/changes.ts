import type { ChangeKind } from '../../contract/change.ts';
import type { changeCodes, needCodes } from '../codes/changes.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';
import type { ChangeWords } from './change-words.ts';
import { changesToChains } from './changes-to-chains.ts';
import { changesToDevices } from './changes-to-devices.ts';
import { changesOfPower } from './changes-to-devices-power.ts';
import { changesOfSettings } from './changes-to-devices-settings.ts';
import { changesToLinks } from './changes-to-links.ts';
import { changesToPlaces, wordsOfOwnKind } from './changes-to-places.ts';
import { changesToPorts } from './changes-to-ports.ts';

const words: { readonly [Kind in ChangeKind]: ChangeWords } = {
  ...changesToLinks,
  ...changesToPorts,
  ...changesToDevices,
  ...changesOfSettings,
  ...changesOfPower,
  ...changesToChains,
  ...changesToPlaces,
};

const wordsOf = (change: Kinds['changeKind']): ChangeWords =>
  typeof change === 'string' ? words[change] : wordsOfOwnKind(change.own);

const verdicts = {
  cleared: 'Das hat den Fehler behoben',
  persists: 'Das hat den Fehler nicht behoben',
  inconclusive: 'Das sagt noch nichts',
};
const named = (change: Kinds['changeKind'], say: Say): string => `„${say.change(change)}“`;

export const changesDe: Sentences<typeof changeCodes> = {
  changeName: ({ change }) => wordsOf(change).label,
  changeAt: ({ change, place }, say) => `${say.change(change)}: ${say.place(place)}`,
  changeOrder: ({ change, place }, say) => wordsOf(change).order((as) => say.place(place, as)),
  playBroughtSource: ({ place }, say) =>
    `Spiel von einer mitgebrachten Quelle statt von ${say.place(place, 'dative')}`,
  changeInstructions: ({ change }) => wordsOf(change).instructions,
  changeAfterwards: ({ change }) => wordsOf(change).afterwards,
  changeDeclared: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${wordsOf(change).instructions}`,
  changeJudged: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${verdicts[verdict]}. ${wordsOf(change).afterwards}`,
  changeStays: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${verdicts[verdict]}. So, wie es jetzt ist, ist es richtig, was immer der Nachtest sagt: Behalt es und mach weiter.`,
  changeStillFails: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut, und der Fehler kommt noch: Beende die Beobachtung und bewerte.`,
  changeQuietLongEnough: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut, und es war lang genug ruhig: Beende die Beobachtung und bewerte.`,
  changeWatchMinutes: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${say.minutesNeeded(minutes)} ohne den Fehler, um es behoben zu nennen.`,
  changeWatchTries: ({ change, place, tries }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${tries} ${say.plural(tries, 'Versuch', 'Versuche')} hintereinander ohne den Fehler, um es behoben zu nennen.`,
  changeLook: ({ change, place, looks }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. ${say.plural(looks, 'Sieh einmal hin: Ist der Fehler da?', `Sieh ${looks}-mal hin: Ist der Fehler da?`)}`,
  changeWatch: ({ change, place, how }, say) =>
    `${named(change, say)}, ${say.place(place)}, ist eingebaut. Beobachte: ${say.message(how)}`,
  changeMayBringItOn: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)}, kann den Fehler hervorrufen. Beobachte ${say.minutesNeeded(minutes)} lang, und sag, ob er kommt.`,
  changeBroughtNothingOn: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat nichts hervorgerufen: Bewerte es und mach weiter.`,
  changeFaultIsBack: ({ change, place }, say) =>
    `Alles ist, wie es war, und der Fehler ist wieder da: Was ihn wegnimmt, ist ${named(change, say)}, ${say.place(place)}.`,
  watchForNothing: () =>
    'Wofür diese Beobachtung begonnen wurde, ist inzwischen anders entschieden. Beende sie.',
  changeWaitForReturn: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat ihn behoben, und alles ist, wie es war. Beobachte, bis der Fehler wiederkommt. Erst dann ist es nachgewiesen.`,
  changeWaitForReturnEvery: ({ change, place, everyMin }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat ihn behoben, und alles ist, wie es war. Beobachte, bis der Fehler wiederkommt: Vorher kam er alle ${say.minutesNeeded(everyMin)}. Erst dann ist es nachgewiesen.`,
  changeDidNotReturn: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat ihn behoben, und ohne das ist er nicht wiedergekommen, obwohl Zeit genug war. Vielleicht nahm ihn schon das Anfassen weg: Benenn es und sag das dazu, oder such weiter.`,
  cureKeptNameIt: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat den Fehler weggenommen und bleibt: Zu testen ist nichts mehr. Benenn, was es war, und leg dann die Abhilfe fest.`,
  cureKeptShowsNothing: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}, hat den Fehler weggenommen und bleibt, zeigt aber nicht, welches Teil es war. Gib den Fall mit dem, was bekannt ist, weiter, oder warte ab, ob der Fehler wiederkommt.`,
};

export const needsDe: Sentences<typeof needCodes> = {
  needSureCable: () => 'ein Kabel, das sicher gut ist: zertifiziert, lang genug, nicht länger als nötig',
  needTapeOrCover: () => 'Klebeband oder eine Kabelbrücke',
  needCouplerOrLongerCable: () =>
    'eine Kupplung, die die volle Rate durchlässt, oder ein längeres Kabel, das sicher gut ist',
  needSyncSwitch: () => 'ein Umschalter, der den Takt erneuert und die volle Rate durchlässt',
  needShortCable: () => 'ein kurzes Kabel, das sicher gut ist',
  needItsPowerSupply: () => 'sein Netzteil',
  needShortPassiveCable: () => 'ein passives Kabel von höchstens etwa 4 m, das sicher gut ist',
  needLongInputCable: () => 'ein langes Kabel für den Eingang des Prozessors',
  needMainsNearDisplay: () => 'Netzstrom nahe der Anzeige',
  needLikeDisplay: () => 'eine andere Anzeige, die denselben Kopierschutz kann und dasselbe Signal nimmt',
  needEarlierSettings: () => 'die früheren Einstellungen, aufgeschrieben oder gesichert',
  needFirmwareFile: () => 'die Firmware-Datei und die Anleitung des Herstellers',
  needTimeForUpdate: () => 'Zeit: Ein abgebrochenes Update kann das Gerät unbrauchbar machen',
  needCableInOnePiece: () => 'ein Kabel aus einem Stück, lang genug von Buchse zu Buchse',
  needOtherSupply: () =>
    'ein Netzteil, das der Hersteller zulässt, mit Spannung, Polung und Strom, wie sie am Gerät stehen',
  needOutletStrip: () => 'eine geerdete Steckdosenleiste, die die Last aller trägt',
  needCableAsLong: ({ lengthM }, say) => `etwa ${say.metres(lengthM)}, so lang wie das, das da ist`,
  needContentProtection: ({ version }) => `Kopierschutz ${version} an der anderen Anzeige`,
};
