import { plural, wordsOf } from '../words/language.ts';

export const secondFactorWords = wordsOf({
  en: {
    title: 'Second step of signing in',
    off: 'Off: your password alone lets you in. With an app on your phone that shows codes, nobody gets in who has only the password.',
    required:
      'Your organisation wants admins to have it. Until it is on, you see nothing but these settings.',
    on: (since: string, last: string) => `On since ${since}; a code was last taken ${last}.`,
    codesLeft: (count: number) =>
      plural('en', count, 'One code for recovery is left.', `${count} codes for recovery are left.`),
    turnOn: 'Turn on an authenticator app',
    newCodes: 'New codes for recovery',
    turnOff: 'Turn it off',
    scan: 'Let the authenticator app read this picture.',
    qrCode: 'QR code with the key for the app',
    orType: 'Or type this key into it:',
    openHere: 'The app is on this device: hand the key over',
    code: 'The code that it shows now',
    codeHint: 'Six digits',
    password: 'Your password',
    confirm: 'Turn it on',
    cancel: 'Cancel',
    keepCodes:
      'Write these codes down and keep them apart from the phone. Each lets you in once when the app is lost. They are not shown again.',
    haveThem: 'I have them',
  },
  de: {
    title: 'Zweiter Schritt der Anmeldung',
    off: 'Aus: dein Passwort allein genügt. Mit einer App auf dem Telefon, die Codes zeigt, kommt niemand hinein, der nur das Passwort hat.',
    required:
      'Deine Organisation will ihn bei Admins. Bis er eingeschaltet ist, siehst du nur diese Einstellungen.',
    on: (since, last) => `An seit ${since}; zuletzt ein Code angenommen ${last}.`,
    codesLeft: (count) =>
      plural(
        'de',
        count,
        'Ein Wiederherstellungscode ist übrig.',
        `${count} Wiederherstellungscodes sind übrig.`,
      ),
    turnOn: 'Authenticator-App einschalten',
    newCodes: 'Neue Wiederherstellungscodes',
    turnOff: 'Ausschalten',
    scan: 'Lass die Authenticator-App dieses Bild lesen.',
    qrCode: 'QR-Code mit dem Schlüssel für die App',
    orType: 'Oder tipp diesen Schlüssel ein:',
    openHere: 'Die App ist auf diesem Gerät: den Schlüssel übergeben',
    code: 'Der Code, den sie jetzt zeigt',
    codeHint: 'Sechs Ziffern',
    password: 'Dein Passwort',
    confirm: 'Einschalten',
    cancel: 'Abbrechen',
    keepCodes:
      'Schreib dir diese Codes auf und bewahre sie getrennt vom Telefon auf. Jeder lässt dich einmal hinein, wenn die App weg ist. Sie werden nicht noch einmal gezeigt.',
    haveThem: 'Ich habe sie',
  },
});
