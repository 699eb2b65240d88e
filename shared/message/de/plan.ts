import type { planCodes } from '../codes/plan.ts';
import type { Sentences } from '../sentences.ts';

export const planDe: Sentences<typeof planCodes> = {
  sentences: ({ sentences }, say) => say.messages(sentences),

  watchWithMenuUp: ({ place }, say) =>
    `Ruf das Menü von ${say.place(place, 'dative')} auf und sieh, ob es bleibt, wenn der Fehler kommt`,
  goOnWatching: () => 'Lass alles, wie es ist, und beobachte weiter',
  clientRefuses: () => 'Der Kunde will es nicht.',
  secondPersonNeeded: () => 'Das braucht eine zweite Person.',
  notAtHand: ({ kit }, say) => `Nicht zur Hand: ${kit.map(say.message).join('; ')}.`,

  menuStays: () => 'Das Menü bleibt',
  menuVanishes: () => 'Das Menü ist mitbetroffen',
  faultStaysAway: () => 'Er bleibt weg',
  faultComes: () => 'Er kommt',

  testTakes: ({ test, minutes }, say) => `${say.message(test)} (etwa ${say.minutesNeeded(minutes)}).`,
  menuMovesOneSuspect: ({ place, probability, otherProbability }, say) =>
    `Bleibt es, steht ${say.place(place)} bei ${say.percent(probability)}; ist es mitbetroffen, bei ${say.percent(otherProbability)}.`,
  menuPartsSuspects: ({ place, probability, other, otherProbability }, say) =>
    `Bleibt es, ist am wahrscheinlichsten ${say.place(place)} (${say.percent(probability)}); ist es mitbetroffen, ${say.place(other)} (${say.percent(otherProbability)}).`,
  faultMovesOneSuspect: ({ place, probability, otherProbability }, say) =>
    `Bleibt der Fehler weg, steht ${say.place(place)} bei ${say.percent(probability)}; kommt er, bei ${say.percent(otherProbability)}.`,
  faultPartsSuspects: ({ place, probability, other, otherProbability }, say) =>
    `Bleibt der Fehler weg, ist am wahrscheinlichsten ${say.place(place)} (${say.percent(probability)}); kommt er, ${say.place(other)} (${say.percent(otherProbability)}).`,
  quietMinutesClear: ({ minutes }, say) => `Ruhe für ${say.minutesNeeded(minutes)} zählt als behoben.`,
  goodLooksClear: ({ looks }, say) =>
    say.plural(
      looks,
      'Ein Blick ohne den Fehler zählt als behoben.',
      `${looks} Blicke ohne den Fehler zählen als behoben.`,
    ),
  quietTriesClear: ({ tries }, say) =>
    `${tries} ${say.plural(tries, 'Versuch', 'Versuche')} hintereinander ohne den Fehler ${say.plural(tries, 'zählt', 'zählen')} als behoben.`,

  inPlaceAlready: () => 'Es ist schon eingebaut, also kostet es nur noch den Rest der Beobachtung.',
  gains: ({ gain }, say) => `${say.start(say.message(gain))}.`,
  nothingTouchedAndGains: ({ gain }, say) => `Nichts wird angefasst, und ${say.message(gain)}.`,
  nothingUnpluggedAndGains: ({ gain }, say) => `Nichts wird abgezogen, und ${say.message(gain)}.`,
  oneAnswerSettles: ({ place, probability }, say) =>
    `eine der zwei Antworten entscheidet es: ${say.place(place)} (${say.percent(probability)})`,
  movesOneSuspect: ({ place, up, down }, say) =>
    `es bringt ${say.place(place, 'accusative')} auf ${say.percent(up)} oder hinunter auf ${say.percent(down)}`,
  partsSuspects: ({ place, other }, say) =>
    `es trennt ${say.place(place, 'accusative')} von ${say.place(other, 'dative')}`,
  minutesToCulprit: ({ minutes }, say) =>
    `Von hier dauert es im Mittel etwa ${say.minutesNeeded(minutes)} bis zur Ursache.`,

  culpritIs: ({ place, probability, failure, repair }, say) =>
    `Es ist ${say.place(place)} (${say.percent(probability)}), am ehesten: ${say.message(failure)}. Bau wieder ein, was im Verdacht steht, und sieh den Fehler wiederkommen; dann ${say.message(repair)}. Beobachte nach der Reparatur noch einmal.`,
  repairForRate: () =>
    'ersetz die Verbindung durch eine, die für die Rate zertifiziert und nicht länger als nötig ist',
  repairPlugs: () =>
    'reinige beide Stecker, steck sie neu, und ersetz die Verbindung, wenn der Fehler wiederkommt',
  repairCoupler: () => 'leg ein Kabel ohne sie, oder ersetz sie durch eine, die die volle Rate durchlässt',
  repairDirection: () => 'dreh die Verbindung um, dass sie richtig herum liegt',
  repairLinkPower: () => 'gib der Elektronik den Strom, den sie verlangt, oder ersetz die Verbindung',
  repairPortMode: () => 'stell die Buchse auf die Betriebsart, die das Format braucht',
  repairEdid: () =>
    'stell die EDID-Einstellungen wieder her, oder lass das EDID der Anzeige weitergeben, wie es ist',
  repairContentProtection: () =>
    'stell an den Buchsen den Kopierschutz ein, den die Quelle verlangt, oder tausch das Gerät',
  repairFirmware: () =>
    'aktualisier die Firmware, nach der Anleitung des Herstellers und ohne dass der Strom ausfällt',
  repairPowerOrHeat: () =>
    'kümmere dich um Lüftung und Stromversorgung; an Netzleitungen arbeitet nur eine Elektrofachkraft',
  repairProcessing: () => 'schalte die Verarbeitung ab, die es tut, oder stell die Einstellungen wieder her',
  repairSetting: () => 'stell das Gerät ein, wie es sein muss, und schreib es auf',
  repairLatched: () =>
    'aktualisier die Firmware, oder lass das Gerät reparieren, denn ein Neustart hilft nur bis zum nächsten Mal',
  repairControlBus: () =>
    'schalte den Steuerbus ab, oder stell ihn so ein, dass nichts Unerwünschtes geschickt wird',
  repairWakeOrder: () =>
    'lass die Geräte in der Reihenfolge wecken, die geht, jedes, sobald das davor bereit ist',
  repairControlSystem: () => 'lass die Abläufe der Steuerung richtigstellen',
  repairDisturbance: () => 'halt fern, was stört, oder leg es auf einen anderen Stromkreis',
  repairEarthLoop: () =>
    'setz einen Trenner in die Antennen-, Satelliten- oder Netzwerkleitung; an der Erdung selbst arbeitet nur eine Elektrofachkraft',
  repairFiveVolt: () =>
    'setz einen Umschalter dahinter, der den Takt erneuert, oder lass den Ausgang reparieren',
  repairCertainContent: () => 'aktualisier die Firmware, oder begrenz den Ausgang auf das, was durchgeht',
  handToSecondLine: () => 'gib den Fall an die zweite Ebene',

  nothingLeftToTry: ({ place, probability }, say) =>
    `Hier bleibt nichts zu versuchen, das die Verdächtigen unterscheidet; am wahrscheinlichsten ist ${say.place(place)} (${say.percent(probability)}). Gib den Fall mit dem Protokoll an die zweite Ebene.`,
  handingOnIsQuicker: ({ place, probability }, say) =>
    `Was hier noch zu versuchen ist, dauert länger, als den Fall weiterzugeben; am wahrscheinlichsten ist ${say.place(place)} (${say.percent(probability)}). Gib ihn mit dem Protokoll an die zweite Ebene.`,
  likeliestOutsideModel: ({ probability }, say) =>
    `Es ist höchstwahrscheinlich etwas außerhalb des Modells (${say.percent(probability)}): Gib den Fall weiter mit dem, was gefunden wurde.`,
  planCutShort: ({ left, of }) =>
    `Die Kette ist zu groß, um alles abzuwägen: Das ist das beste von ${of - left} aus ${of} Tests, denen an dem, was am meisten verdächtig ist.`,
  visitNeeded: () =>
    'Nichts, was ein Kunde gefahrlos tun kann, würde mehr verraten: Es braucht einen Einsatz.',
  watchForMoreFirst: ({ seen, retestMin, enough, thenRetestMin }, say) =>
    `Der Fehler wurde nur ${say.times(seen)} gesehen, also dauert jeder ruhige Nachtest ${say.minutesNeeded(retestMin)}. Beobachte erst, bis er ${say.times(enough)} gesehen wurde: Bei gleicher Häufigkeit dauert ein Nachtest dann ${say.minutesNeeded(thenRetestMin)}.`,
};
