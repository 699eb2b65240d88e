import type { suspectCodes } from '../codes/suspects.ts';
import type { Sentences } from '../sentences.ts';

export const suspectsDe: Sentences<typeof suspectCodes> = {
  suspect: ({ place }, say) => say.place(place),

  tooLittleMargin: () => 'zu wenig Reserve für die Datenrate',
  looseContact: () => 'ein loser Kontakt oder Wackelkontakt',
  couplerAtFault: () => 'eine Kupplung, Wanddose oder ein Adapter darin',
  laidWrongWayRound: () => 'verkehrt herum gelegt',
  tooLittleLinkPower: () => 'zu wenig Strom für die Elektronik',
  portModeAtFault: () => 'die Betriebsart, auf der eine Buchse steht',
  edidHandlingAtFault: () => 'der Umgang mit dem EDID',
  contentProtectionAtFault: () => 'der Kopierschutz',
  firmwareAtFault: () => 'die Firmware',
  powerOrHeatAtFault: () => 'Stromversorgung oder Hitze',
  processingAtFault: () => 'die Bildverarbeitung',
  settingAtFault: () => 'die Einstellung des Geräts',
  latchedUntilRestart: () => 'ein Zustand, in dem es hängt, bis es neu startet',
  controlBusAtFault: () => 'was die Geräte einander über den Steuerbus sagen',
  wakeOrderAtFault: () => 'die Reihenfolge, in der die Geräte aufwachen',
  controlSystemAtFault: () => 'was die Steuerung den Geräten befiehlt',
  disturbedFromOutside: () => 'etwas in der Nähe, das stört',
  earthLoopAtFault: () => 'eine Erdschleife',
  fiveVoltStartAtFault: () => 'der Anlauf der 5-V-Leitung',
  certainContentAtFault: () => 'was bei bestimmtem Inhalt herauskommt',
  notInModel: () => 'etwas, das nicht im Modell steht',

  onTheWayOrBeside: () => 'Liegt auf dem Weg des Bildes oder daneben',
  knownOfCable: () => 'Was über das Kabel bekannt ist',
  auditSays: ({ finding }, say) => `Prüfung: ${say.message(finding)}`,
  changedBefore: ({ what }, say) => `Was sich änderte: ${say.term('whatChanged', what)}`,
  workedBefore: () => 'Es ging vorher',
  neverWorked: () => 'Es ging nie',
  symptomIs: ({ symptom }, say) => `Symptom: ${say.term('symptom', symptom)}`,
  whichSourcesShowIt: () => 'Welche Quellen ihn zeigen',
  showsWithAnyContent: () => 'Er zeigt sich bei jedem Inhalt',
  showsAboveSomeFormat: () => 'Er zeigt sich erst ab einem bestimmten Format',
  showsWithProtectedContent: () => 'Er zeigt sich nur bei geschütztem Inhalt',
  comesAtAnyTime: () => 'Er kommt jederzeit',
  comesAtSwitching: () => 'Er kommt, wenn etwas umgeschaltet oder gestartet wird',
  comesWhenWarm: () => 'Er kommt erst nach dem Warmwerden',

  enteredLateCounts: ({ said, weight }, say) =>
    `${say.message(said)} (nachgetragen: zählt ${say.percent(weight)})`,
  earlierRoundCounts: ({ said, weight }, say) =>
    `${say.message(said)} (in einer früheren Runde: zählt ${say.percent(weight)})`,
  perhapsTwoCounts: ({ said, weight }, say) =>
    `${say.message(said)} (als vielleicht zwei Fehler da waren: zählt ${say.percent(weight)})`,
  menuStayedAt: ({ place }, say) =>
    `Das Menü von ${say.place(place, 'dative')} blieb unberührt, als der Fehler kam`,
  menuVanishedAt: ({ place }, say) =>
    `Das Menü von ${say.place(place, 'dative')} war mitbetroffen, als der Fehler kam`,
  edidReadFailedAt: ({ place }, say) => `An ${say.place(place, 'dative')} ließ sich das EDID nicht lesen`,
  edidDiffersAt: ({ place }, say) =>
    `Das EDID an ${say.place(place, 'dative')} weicht ab von dem, was die Anzeige sagt`,
  authenticationFailedAt: ({ place }, say) =>
    `An ${say.place(place, 'dative')} schlug die Anmeldung des Kopierschutzes fehl`,
  linkFellBackAt: ({ place }, say) =>
    `An ${say.place(place, 'dative')} fiel das Aushandeln auf eine niedrigere Rate zurück`,
  hotPlugDroppedAt: ({ place }, say) => `Hot-Plug fiel an ${say.place(place, 'dative')} ab`,
  syncLostAt: ({ place }, say) => `Der Takt ging an ${say.place(place, 'dative')} verloren`,
  restartLoggedAt: ({ place }, say) => `Ein Neustart steht im Protokoll von ${say.place(place, 'dative')}`,
  formatChangedAt: ({ place }, say) => `Das Format änderte sich an ${say.place(place, 'dative')} von selbst`,
  changeCleared: ({ change, place }, say) =>
    `${say.change(change)}: ${say.place(place)} – der Fehler war weg`,
  changeDidNotClear: ({ change, place }, say) =>
    `${say.change(change)}: ${say.place(place)} – der Fehler war noch da`,
  changeWatched: ({ change, place, seen }, say) =>
    `${say.change(change)}: ${say.place(place)} – ${say.message(seen)}`,
  changePutBackAndWatched: ({ change, place, seen }, say) =>
    `${say.change(change)}: ${say.place(place)}, zurückgebaut – ${say.message(seen)}`,
  notSeenInMinutes: ({ minutes }, say) => `nichts in ${say.minutesWatched(minutes)}`,
  notThereAtLook: ({ looks }, say) => `bei ${say.plural(looks, 'einem Blick', `${looks} Blicken`)} nicht da`,
  thereAtLook: ({ looks }, say) => `bei ${say.plural(looks, 'einem Blick', `${looks} Blicken`)} da`,
  notSeenInTries: ({ tries }, say) => `nichts in ${tries} ${say.plural(tries, 'Versuch', 'Versuchen')}`,
  seenInMinutes: ({ seen, minutes }, say) => `${say.times(seen)} gesehen in ${say.minutesWatched(minutes)}`,
  seenInTries: ({ seen, tries }, say) =>
    `${say.times(seen)} gesehen in ${tries} ${say.plural(tries, 'Versuch', 'Versuchen')}`,
};
