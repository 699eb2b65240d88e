import type { AuditEntry } from '../../../shared/contract/audit-log.ts';
import type { MemberRole } from '../../../shared/contract/people-names.ts';
import { wordsOf } from '../words/language.ts';
import { terms } from '../words/terms.ts';

const en = {
  lead: 'Sign-ins, what members change about how they sign in, who may see what, exports, and what admins do.',
  whose: 'Show',
  everybody: 'Everybody',
  older: 'Show older entries',
  none: 'Nothing yet.',
  toTicket: 'To the ticket',
  toSite: 'To the client',
  operator: 'Whoever runs the server',
  unknown: 'an account that is not here',
  ways: {
    password: 'with the password',
    app: 'with a code of their app',
    recoveryCode: 'with a code for recovery',
  } as Record<string, string>,
  inactive: 'may not sign in',
  said: {
    signedIn: ({ who, detail }) => `${who} signed in ${detail}`,
    signInRefused: ({ whom }) => `A sign-in as ${whom} was refused`,
    codeRefused: ({ whom }) => `A code of ${whom} was refused, after the right password`,
    passwordRefused: ({ who }) => `${who} was asked for their password once more, and got it wrong`,
    signedOut: ({ who }) => `${who} signed out`,
    tokenUsedTwice: ({ whom }) =>
      `A sign-in of ${whom} was ended, because it was used from two places: somebody may have copied it`,
    sessionsEnded: ({ who }) => `${who} ended sign-ins of their own elsewhere`,
    passwordChanged: ({ who }) => `${who} changed their password`,
    appTurnedOn: ({ who }) => `${who} turned an authenticator app on`,
    appTurnedOff: ({ who }) => `${who} turned their authenticator app off`,
    recoveryCodesRenewed: ({ who }) => `${who} made new codes for recovery`,
    memberAdded: ({ who, whom, detail }) => `${who} added ${whom} (${detail})`,
    memberChanged: ({ who, whom, detail }) => `${who} changed ${whom}: ${detail}`,
    memberPasswordSet: ({ who, whom }) => `${who} set the password of ${whom}`,
    memberFactorsTaken: ({ who, whom }) => `${who} took the second factor off ${whom}`,
    memberRecovered: ({ who, whom }) => `${who} let ${whom} in again with a new password`,
    organisationChanged: ({ who }) => `${who} changed the numbers of the firm`,
    packetGranted: ({ who }) => `${who} showed a packet to second line elsewhere`,
    grantRevoked: ({ who }) => `${who} ended showing a packet to second line elsewhere`,
    textErased: ({ who }) => `${who} erased a text of a ticket`,
    clientExported: ({ who }) => `${who} took what we have of a client as a zip`,
    everythingExported: ({ who }) => `${who} took everything away as a zip`,
    accessRefused: ({ who, detail }) => `${who} asked for what their role may not have: ${detail}`,
  } satisfies Said as Said,
};
/** Who did it, to whom, and what else there is to say, in words. */
type Parts = { readonly who: string; readonly whom: string; readonly detail: string };
type Said = Readonly<Record<AuditEntry['kind'], (parts: Parts) => string>>;
const de: typeof en = {
  lead: 'Anmeldungen, was Mitglieder an ihrer Anmeldung ändern, wer was sehen darf, Exporte, und was Admins tun.',
  whose: 'Zeigen',
  everybody: 'Alle',
  older: 'Ältere Einträge zeigen',
  none: 'Noch nichts.',
  toTicket: 'Zum Ticket',
  toSite: 'Zum Kunden',
  operator: 'Wer den Server betreibt',
  unknown: 'ein Konto, das es hier nicht gibt',
  ways: { password: 'mit dem Passwort', app: 'mit einem Code der App', recoveryCode: 'mit einem Ersatzcode' },
  inactive: 'darf sich nicht anmelden',
  said: {
    signedIn: ({ who, detail }) => `${who}: angemeldet ${detail}`,
    signInRefused: ({ whom }) => `Eine Anmeldung wurde abgelehnt: ${whom}`,
    codeRefused: ({ whom }) => `Ein Code wurde nach dem richtigen Passwort abgelehnt: ${whom}`,
    passwordRefused: ({ who }) => `${who}: das Passwort, noch einmal erfragt, war falsch`,
    signedOut: ({ who }) => `${who}: abgemeldet`,
    tokenUsedTwice: ({ whom }) =>
      `Eine Anmeldung von ${whom} wurde beendet, weil sie von zwei Stellen benutzt wurde: vielleicht hat sie jemand kopiert`,
    sessionsEnded: ({ who }) => `${who}: eigene Anmeldungen anderswo beendet`,
    passwordChanged: ({ who }) => `${who}: Passwort geändert`,
    appTurnedOn: ({ who }) => `${who}: Authenticator-App eingeschaltet`,
    appTurnedOff: ({ who }) => `${who}: Authenticator-App ausgeschaltet`,
    recoveryCodesRenewed: ({ who }) => `${who}: neue Ersatzcodes gemacht`,
    memberAdded: ({ who, whom, detail }) => `${who}: ${whom} hinzugefügt (${detail})`,
    memberChanged: ({ who, whom, detail }) => `${who}: ${whom} geändert: ${detail}`,
    memberPasswordSet: ({ who, whom }) => `${who}: Passwort von ${whom} gesetzt`,
    memberFactorsTaken: ({ who, whom }) => `${who}: ${whom} den zweiten Faktor abgenommen`,
    memberRecovered: ({ who, whom }) => `${who}: ${whom} mit neuem Passwort wieder eingelassen`,
    organisationChanged: ({ who }) => `${who}: Zahlen des Betriebs geändert`,
    packetGranted: ({ who }) => `${who}: ein Paket der zweiten Stufe anderswo gezeigt`,
    grantRevoked: ({ who }) => `${who}: ein Paket wird der zweiten Stufe anderswo nicht mehr gezeigt`,
    textErased: ({ who }) => `${who}: einen Text eines Tickets gelöscht`,
    clientExported: ({ who }) => `${who}: was wir von einem Kunden haben, als Zip mitgenommen`,
    everythingExported: ({ who }) => `${who}: alles als Zip mitgenommen`,
    accessRefused: ({ who, detail }) => `${who}: wollte, was die Rolle nicht darf: ${detail}`,
  },
};
export const auditLogWords = wordsOf({ en, de });

/** An entry as a sentence. */
export function entrySaid(entry: AuditEntry): string {
  const t = auditLogWords();
  return t.said[entry.kind]({
    who: entry.actorName ?? t.operator,
    whom: entry.memberName ?? t.unknown,
    detail: detailOf(entry),
  });
}

function detailOf({ kind, detail }: AuditEntry): string {
  const t = auditLogWords();
  if (detail === null) return '';
  if (kind === 'signedIn') return t.ways[detail] ?? '';
  if (kind !== 'memberAdded' && kind !== 'memberChanged') return detail;
  const [role = '', inactive] = detail.split(' ');
  const named = terms().memberRole[role as MemberRole];
  return inactive === undefined ? named : `${named}, ${t.inactive}`;
}
