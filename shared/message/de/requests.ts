import type { requestCodes } from '../codes/requests.ts';
import type { Sentences } from '../sentences.ts';

export const requestsDe: Sentences<typeof requestCodes> = {
  requestTooLarge: () => 'Die Anfrage ist größer, als diese Adresse sie nimmt.',
  fileTooLargeForOneRequest: () =>
    'Die Datei ist zu groß für eine einzige Anfrage. Schick sie an /uploads, wo sie nach einer Unterbrechung weitergeht.',
  sendAsJson: () => 'Schick application/json.',
  sendAsForm: () => 'Schick multipart/form-data.',
  requestUnreadable: ({ reason }, say) => `Die Anfrage ist nicht lesbar: ${say.text(reason)}`,
  formUnreadable: () => 'Das Formular bricht vor seinem Ende ab oder ist kein multipart/form-data.',
  notHttp: () => 'Das ist kein HTTP, wie es der Server liest.',
  headersTooLarge: ({ limitKiB }) => `Adresse und Kopf sind zusammen größer als ${limitKiB} KiB.`,
  requestCameLate: () => 'Die Anfrage kam nicht rechtzeitig ganz an.',
  requestsTooMany: () => 'So viele Anfragen auf einmal sind zu viele. Warte eine Minute.',
  tryAgainSoon: () => 'Versuch es gleich noch einmal.',
  workTooLarge: () => 'Das braucht mehr Speicher, als der Server für eine Anfrage hergibt.',
  quotaOpenUploads: ({ most }) =>
    `In deiner Organisation sind ${most} Uploads unterwegs, mehr nimmt der Server nicht. Führ einige zu Ende, oder gib welche auf.`,
  quotaStoredBytes: ({ mostMB }) =>
    `Deine Organisation bewahrt so viele Belege auf, wie dieser Server von ihr nimmt: ${mostMB} MB. Wer den Server betreibt, kann mehr erlauben.`,
  quotaEventStreams: ({ most }) =>
    `Deine Organisation verfolgt Änderungen ${most}-mal gleichzeitig. Schließ einige Bildschirme.`,
  quotaRequests: ({ most }) =>
    `Deine Organisation fragt öfter als ${most}-mal in der Minute. Warte eine Minute.`,
  newerServerWrote: ({ found, known }) =>
    `Das hat ein neuerer Server geschrieben: Es hat Fassung ${found}, und dieser Server liest bis ${known}. Frag wieder, wenn alle Server ersetzt sind.`,
  ticketUnreadable: () =>
    'Was an diesem Ticket geschah, lässt sich aus seinem Verlauf nicht lesen. Wer den Server betreibt, findet den Grund mit npm run tickets:rebuild.',
  requestFailed: ({ request }) => `Nenn dem, der diesen Server betreibt, die Anfrage ${request}.`,
  clientNotBuilt: () =>
    'Die Oberfläche ist hier nicht gebaut: npm run build baut sie. Die Schnittstelle ist unter /reference beschrieben.',
  nothingAtAddress: ({ path }, say) => `Unter ${say.text(path)} ist nichts.`,
  methodNotTaken: ({ path, taken, method }, say) =>
    `${say.text(path)} nimmt ${taken.join(', ')}, nicht ${method}.`,
  fieldsDoNotFit: () => 'Einige Angaben passen nicht. Jede steht unten einzeln.',
  cursorForeign: () => 'Dieses Lesezeichen stammt nicht aus dieser Liste.',
  accessTokenNeeded: () => 'Schick ein gültiges Zugangstoken als Bearer-Token.',
  accountInactive: () => 'Dieses Konto ist nicht mehr aktiv.',
  roleNotAllowed: ({ role, allowed }, say) =>
    `Das ist Sache von: ${say.and(allowed.map((one) => say.term('memberRole', one)))}. Du bist angemeldet als: ${say.term('memberRole', role)}.`,
  signInRefused: ({ tries, lockedMin }) =>
    `Organisation, E-Mail oder Passwort stimmt nicht, oder das Konto ist nach ${tries} falschen Versuchen für ${lockedMin} Minuten gesperrt.`,
  signInWrong: () => 'Organisation, E-Mail oder Passwort stimmt nicht.',
  signInDelayed: ({ minutes }) =>
    `Zu viele falsche Versuche von hier: versuch es in ${minutes === 1 ? 'einer Minute' : `${minutes} Minuten`} noch einmal. Von anderswo und auf anderen Geräten hat sich nichts geändert.`,
  signInAgain: () => 'Melde dich neu an.',
  idempotencyKeyNeeded: () =>
    'Schick einen Idempotency-Key aus 8 bis 200 sichtbaren Zeichen: einen neuen für alles, was du vorhast, und beim Wiederholen denselben.',
  idempotencyKeyReused: () => 'Dieser Schlüssel kam schon mit einer anderen Anfrage. Nimm einen neuen.',
  versionNeeded: () => 'Schick If-Match mit dem ETag der Fassung, auf die sich die Änderung bezieht.',
  versionOutdated: () =>
    'Jemand hat es geändert, seit du es gelesen hast. Lies es noch einmal und wiederhole die Änderung.',
  likeOneAlready: () => 'So etwas gibt es schon.',
  referenceMissing: () => 'Etwas, worauf sich das bezieht, gibt es nicht.',
  noSuchProblemKind: () => 'So ein Problem gibt es nicht.',
};
