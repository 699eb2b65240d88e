import type { recordCodes } from '../codes/records.ts';
import type { Sentences } from '../sentences.ts';

export const recordsDe: Sentences<typeof recordCodes> = {
  noSuchSite: () => 'Diesen Ort gibt es nicht.',
  noSuchChain: () => 'Diese Kette gibt es nicht.',
  noSuchChainVersion: () => 'Diese Fassung hat die Kette nicht.',
  noSuchTicket: () => 'Dieses Ticket gibt es nicht.',
  noSuchPacket: () => 'Dieses Paket gibt es nicht.',
  noSuchGrant: () => 'Diese Freigabe gibt es nicht.',
  noSuchMember: () => 'Dieses Mitglied gibt es nicht.',
  noSuchSession: () => 'Diese Anmeldung von dir gibt es nicht.',
  noSuchFirmwareLevel: () => 'Diesen Firmware-Stand gibt es nicht.',
  chainNotAtSite: () => 'An diesem Ort gibt es diese Kette nicht.',
  chainLacksDevice: ({ deviceId }, say) => `Die Kette hat kein Gerät ${say.text(deviceId)}.`,
  chainLacksDisplay: ({ deviceId }, say) => `Die Kette hat keine Anzeige ${say.text(deviceId)}.`,
  chainLacksPort: ({ portId }, say) => `Dieses Gerät hat keine Buchse ${say.text(portId)}.`,
  chainLacksLink: ({ linkId }, say) => `Die Kette hat keine Verbindung ${say.text(linkId)}.`,
  granteeUnreachable: () =>
    'Unter dieser Adresse ist niemand der zweiten Ebene einer anderen Organisation zu erreichen.',
  firmwareLevelExists: ({ model, minimum }, say) =>
    `Für ${say.name(model)} gibt es schon einen Stand: ${say.name(minimum)}. Ändere ihn.`,
  textHashed: () =>
    'Das Ereignis wurde aufgezeichnet, bevor Texte zu löschen waren: Sein Text gehört zu dem, worüber sein Hash geht.',
  noTextThere: () => 'An dieser Stelle des Protokolls steht kein Text, den jemand geschrieben hat.',
  erasureForged: () => 'Dass ein Text gelöscht wurde, kann niemand schreiben.',
  openTicketsAtChain: ({ numbers }, say) =>
    `An derselben Kette offen: ${say.and(numbers.map((number) => `Nr. ${number}`))}. Ist das ein anderer Fehler, schick die Kennungen in seenDuplicates mit.`,
  changeOpenElsewhere: ({ ticketNumber, change }, say) =>
    `Ticket Nr. ${ticketNumber} hat an dieser Kette eine Änderung offen: ${say.change(change)}. Sie muss zuerst zurückgebaut werden.`,
  ticketWithSomebody: ({ holder }, say) => `Dieses Ticket hat ${say.name(holder)}. Übernimm es zuerst.`,
  ticketWithNobody: () => 'Dieses Ticket hat noch niemand. Übernimm es zuerst.',
  assigneeInactive: ({ member }, say) => `${say.name(member)} ist nicht mehr aktiv.`,
  assigneeNoTechnician: ({ member }, say) => `${say.name(member)} gehört nicht zur Technik.`,
  emailTaken: () => 'Ein Mitglied dieser Organisation hat diese E-Mail-Adresse schon.',
  passwordWrong: () => 'Das jetzige Passwort stimmt nicht.',
  passwordRepeats: () => 'Ein oder zwei Zeichen immer wieder werden zuerst probiert. Nimm etwas anderes.',
  passwordMostUsed: () =>
    'Das ist eines der meistbenutzten Passwörter und wird zuerst probiert. Nimm ein anderes.',
  passwordIsName: () =>
    'Namen von Leuten und der Organisation werden zuerst probiert. Nimm etwas dazu, das niemand mit dir verbindet.',
  otherAdminNeeded: () => 'Gib zuerst jemand anderem die Verwaltung.',
};
