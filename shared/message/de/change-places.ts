import type { changePlacesCodes } from '../codes/change-places.ts';
import type { Sentences } from '../sentences.ts';

export const changePlacesDe: Sentences<typeof changePlacesCodes> = {
  noSideForChange: () => 'Noch ist keine Seite bekannt, also lässt sich nicht sagen, was zu ändern lohnt.',
  keptAlready: () => 'Das wurde gemacht und behalten: Es gehört jetzt zur Kette.',
  nothingUnderThatId: () =>
    'In der Kette wie vorgefunden gibt es nichts unter dieser Kennung. Ist es doch da, nimm die Seiten zurück, berichtige die Beschreibung der Kette und halte sie neu als vorgefunden fest.',
  onTheOtherSide: () =>
    'Daran kann es nicht mehr liegen: Es liegt auf der anderen Seite. Stimmt die Seite nicht, geh zurück zur Suche nach ihr und nimm sie zurück.',
  cableInWall: () => 'Es liegt in der Wand: Überbrück es stattdessen mit einem vorübergehenden Kabel.',
  cableShortAndFree: () => 'Es ist kurz und liegt frei: Ersetz es stattdessen.',
  noParallelBranch: () => 'Daneben gibt es keinen parallelen Zweig.',
  watchedPictureRunsThrough: () => 'Das beobachtete Bild läuft hindurch.',
  portModeNotSet: () =>
    'Die Betriebsart ist nicht eingestellt: Sie steht auf automatisch oder lässt sich nicht einstellen.',
  portModeHighest: () => 'Die höchste Betriebsart ist schon eingestellt.',
  nothingPluggedIn: () => 'Dort steckt nichts.',
  noProcessorFollows: () => 'Dahinter kommt kein Prozessor.',
  straightIntoProcessor: () => 'Es geht schon jetzt direkt in den Prozessor.',
  noSignalInAndOut: () => 'Dort geht kein Signal hinein und wieder hinaus.',
  nothingToSwitchOff: () =>
    'So, wie es eingestellt ist, verarbeitet es weder das Bild noch verwaltet es das EDID.',
  noDisplayFollows: () => 'Dahinter kommt keine Anzeige.',
  noEarlierSettings: () => 'Frühere Einstellungen sind nicht bekannt.',
  doneToDevice: ({ change }, say) => `„${say.change(change)}“ gehört zu einem Gerät.`,
  doneToPort: ({ change }, say) => `„${say.change(change)}“ gehört zu einer Buchse.`,
  doneToLink: ({ change }, say) => `„${say.change(change)}“ gehört zu einem Kabel.`,
  doneToChain: ({ change }, say) => `„${say.change(change)}“ gehört zur Kette als Ganzem.`,
  describeTheChange: () => 'Beschreib, was geändert wird: Sonst kann es niemand wissen.',
  ownKindUnknown: () => 'Eine solche Art von Änderung hat deine Firma nicht oder nicht mehr.',
  opticalNotFlexed: () => 'Es ist ein optisches Kabel: Biegen kann es brechen.',
  cableNotInReach: () => 'Es liegt nicht frei, also lässt es sich nicht vom Boden aus von Hand biegen.',
  doneAtRoles: ({ roles, role }, say) =>
    `Das gehört zur Rolle ${say.or(roles.map((each) => say.term('role', each)))}, nicht zur Rolle ${say.term('role', role)}.`,
  nothingOnInput: () => 'Kein Eingang davon ist belegt.',
  nothingOnOutput: () => 'Kein Ausgang davon ist belegt.',
  inputLimitedAlready: ({ rate }, say) =>
    `Der Eingang lässt schon jetzt nicht mehr als ${say.gbps(rate)} durch.`,
  outputLimitedAlready: ({ rate }, say) =>
    `Der Ausgang lässt schon jetzt nicht mehr als ${say.gbps(rate)} durch.`,
  noOtherInput: () => 'Dort ist kein anderer Eingang frei.',
  noOtherOutput: () => 'Dort ist kein anderer Ausgang frei.',
  cannotBypass: ({ role }, say) => `Das lässt sich nicht umgehen: ${say.term('role', role)}.`,
  joinedWithin: ({ length }, say) =>
    `Schon jetzt liegen nicht mehr als ${say.metres(length)} bis zur Anzeige.`,
  untriedFirst: ({ change, place }, say) =>
    `Ein Update lässt sich nicht rückgängig machen, also kommt es zuletzt: „${say.change(change)}“, ${say.place(place)}, ist noch nicht versucht.`,
};
