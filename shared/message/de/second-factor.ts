import type { secondFactorCodes } from '../codes/second-factor.ts';
import type { Sentences } from '../sentences.ts';

const inMinutes = (minutes: number): string => (minutes === 1 ? 'einer Minute' : `${minutes} Minuten`);

export const secondFactorDe: Sentences<typeof secondFactorCodes> = {
  secondFactorNeeded: () =>
    'Das Passwort stimmt. Schick einen Code der Authenticator-App oder einen Wiederherstellungscode.',
  codeWrong: () =>
    'Dieser Code stimmt nicht oder wurde schon benutzt. Jeder gilt einmal und ungefähr eine Minute lang.',
  codesDelayed: ({ minutes }) =>
    `Zu viele falsche Codes: versuch es in ${inMinutes(minutes)} noch einmal. Ein Wiederherstellungscode gilt auch jetzt.`,
  passwordDelayed: ({ minutes }) =>
    `Zu viele falsche Passwörter: versuch es in ${inMinutes(minutes)} noch einmal.`,
  secondStepOver: () => 'Das hat zu lange gedauert. Fang noch einmal mit dem Passwort an.',
  secondFactorWanted: () =>
    'Deine Organisation will von Admins mehr als ein Passwort. Schalte in den Einstellungen eine Authenticator-App ein.',
  secondFactorStays: () => 'Deine Organisation will, dass er bei Admins eingeschaltet bleibt.',
  appProposalOld: () =>
    'Dieser Schlüssel wurde vor zu langer Zeit oder jemand anderem angeboten. Fang noch einmal an.',
  appThereAlready: () => 'Es gibt schon eine App. Schalte zuerst diese aus.',
  noSecondFactor: () => 'Es ist kein zweiter Faktor eingeschaltet.',
};
