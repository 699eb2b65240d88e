import type { auditDeviceCodes } from '../codes/audit-devices.ts';
import type { Sentences } from '../sentences.ts';

export const auditDevicesDe: Sentences<typeof auditDeviceCodes> = {
  receiverModesUnknown: ({ receiver, ports, required }, say) =>
    `Einem Receiver muss man oft sagen, dass er ${say.gbps(required)} durchlassen soll; worauf ${say.and(ports.map(say.label))} an ${say.place(receiver, 'dative')} ${say.plural(ports.length, 'steht', 'stehen')}, ist nicht notiert.`,
  lookUpSignalFormats: () =>
    'Sieh im Menü das Signalformat jedes Eingangs und Ausgangs nach und schreib es auf.',
  extenderOnTheWay: ({ extender }, say) =>
    `${say.start(say.place(extender))} ist ein Gerät mehr auf dem Weg; Verlängerungen über verdrillte Paare meidet man am besten.`,
  lookWhatExtenderRunsOver: () =>
    'Sieh nach, worüber sie läuft, und schreib es auf; plan ein aktives optisches Kabel statt verdrillter Paare.',
  processesBesideProcessor: ({ device, processor }, say) =>
    `${say.start(say.place(device))} skaliert oder verarbeitet das Bild; mit ${say.place(processor, 'dative')} auf dem Weg sollte das nur jener tun.`,
  switchProcessingOff: () =>
    'Schreib die Einstellungen auf, dann schalte Skalierung, Wandlung und Verarbeitung dort ab.',
  processesPicture: ({ device }, say) =>
    `${say.start(say.place(device))} skaliert oder verarbeitet das Bild.`,
  switchProcessingOffForTheSearch: () =>
    'Schreib die Einstellungen auf; schalte Skalierung und Verarbeitung ab, solange du den Fehler suchst.',
  processesBesideAnother: ({ device, other }, say) =>
    `${say.start(say.place(device))} skaliert oder verarbeitet das Bild, und ${say.place(other)} ebenso.`,
  leaveProcessingToOne: () =>
    'Schreib die Einstellungen auf, dann überlass Skalierung und Verarbeitung einem einzigen Gerät.',
  edidReplaced: ({ device }, say) =>
    `${say.start(say.place(device))} antwortet mit einem eigenen EDID, statt weiterzugeben, was die Anzeige sagt.`,
  edidLimited: ({ device }, say) =>
    `${say.start(say.place(device))} antwortet mit einem beschränkten EDID, statt weiterzugeben, was die Anzeige sagt.`,
  switchEdidManagementOff: () =>
    'Schreib die Einstellungen auf, dann schalte die EDID-Verwaltung ab; überlass sie allenfalls dem Prozessor.',
  lossAtDevice: ({ loss }, say) => `${say.start(say.message(loss))}.`,
  edidReplacedLosing: ({ device, what }, say) =>
    `${say.start(say.place(device))} zeigt den Quellen ein eigenes EDID, ohne ${say.and(what.map(say.message))}.`,
  edidLimitedLosing: ({ device, what }, say) =>
    `${say.start(say.place(device))} beschränkt das EDID dessen, was folgt, und nimmt ${say.and(what.map(say.message))} heraus.`,
  askForWhatIsTaken: () =>
    'Verlang, was es kann, oder nimm ein Gerät, das mehr kann; kann es das doch, berichtige die Aufzeichnung.',
  letDevicePass: () =>
    'Such eine Einstellung, die es durchlässt. Gibt es keine, führ das Bild am Gerät vorbei, oder lass es mit Absicht umwandeln und schreib das auf.',
  setInputToAdmit: () =>
    'Stell den Eingang der Anzeige auf die Betriebsart, die es erlaubt, und lies ihr EDID noch einmal: Viele erlauben HDR und schnelle Betriebsarten nur dann.',
  setInputOrAskForListed: () =>
    'Stell den Eingang der Anzeige auf die Betriebsart, die es erlaubt, und lies ihr EDID noch einmal: Viele erlauben schnelle Formate nur dann. Steht es dann immer noch nicht darin, verlang ein Format, das sie nennt.',
  feedDisplaysAlike: () =>
    'Speis die geringere Anzeige aus einem Ausgang mit eigenem Bild, oder verlang, was alle nehmen.',
  askForTenBits: () => 'Verlang 10 Bit oder mehr; 4:2:2 bringt sie ohne höhere Rate.',
  askForLessSound: () =>
    'Verlang weniger Kanäle oder eine kleinere Rate des Tons, oder sende ihn komprimiert; ein Timing mit mehr Austastung hat mehr Platz.',
  feedsOtherDisplays: ({ device, others, display }, say) =>
    `${say.start(say.place(device))} speist auch ${say.and(others.map((one) => say.place(one, 'accusative')))}, neben ${say.place(display, 'dative')}.`,
  unplugForTheSearch: ({ cable, at }, say) =>
    `Zieh ${say.place(cable, 'accusative')} an ${say.device(at)} ab, solange du den Fehler suchst.`,
  feedsInParallel: ({ device, displays }, say) =>
    `${say.start(say.place(device))} speist parallel ${say.and(displays.map((one) => say.place(one, 'accusative')))}.`,
  leaveOneDisplay: () => 'Lass nur die Anzeige gesteckt, die den Fehler zeigt, solange du ihn suchst.',
  firmwareBelowLevel: ({ device, firmware, minimum, model }, say) =>
    `Firmware ${say.name(firmware)} von ${say.place(device, 'dative')} liegt unter ${say.name(minimum)}, dem niedrigsten Stand, den dein Betrieb beim Modell ${say.name(model)} zulässt.`,
  updateFirmwareTo: ({ minimum }, say) =>
    `Sichere die Einstellungen, schreib den vorgefundenen Stand auf, dann aktualisier auf ${say.name(minimum)} oder neuer.`,
  firmwareLevelUnknown: ({ device, minimum, reason }, say) =>
    `Ob die Firmware von ${say.place(device, 'dative')} den Stand ${say.name(minimum)} erreicht, lässt sich nicht sagen: ${say.message(reason)}.`,
  askBeforeUpdating: () =>
    'Aktualisiere nichts, bevor der Hersteller gesagt hat, was von beidem neuer ist: Zurück geht es danach oft nicht.',
  readFirmware: () => 'Lies den Firmware-Stand im Menü und schreib ihn auf, wie er dasteht.',
};
