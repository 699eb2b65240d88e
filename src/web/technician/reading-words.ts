import { plural, wordsOf } from '../words/language.ts';

/** Words of reading firmware and settings off a device. */
export const readingWords = wordsOf({
  en: {
    lastKnown: 'Last known',
    before: 'Before that',
    nothingKnown: 'nothing yet',
    described: 'as described',
    readAt: (when: string) => `read ${when}`,
    minimum: 'At least',
    firmwareNow: 'Firmware as the device shows it',
    below: (level: string, minimum: string) =>
      `${level} is below ${minimum}, the least this firm accepts. Do not update it now: an update is a change of its own, to be declared first.`,
    same: (value: string) => `Still ${value}`,
    keepFirmware: 'Keep this firmware',
    kept: '✓ Kept on this phone',
    settingsLead:
      'Read them off the device’s own menu. “=” takes the last known value over after you looked.',
    phase: 'Read …',
    phases: {
      before: 'before the open change',
      after: 'after the open change',
      apart: 'apart from it',
    },
    noSettings: 'No setting of this device is known yet. Add the first one.',
    notKnownYet: 'New on this ticket',
    asBefore: (key: string) => `${key} is as it was`,
    another: 'Another setting',
    anotherHint: 'Its name, as the menu has it',
    addAnother: 'Add this setting',
    notAll: (keys: string) => `Before and after are compared setting by setting. Not filled in yet: ${keys}.`,
    keepSettings: (count: number) =>
      count === 0 ? 'Keep' : plural('en', count, 'Keep 1 setting', `Keep ${count} settings`),
  },
  de: {
    lastKnown: 'Zuletzt bekannt',
    before: 'Davor',
    nothingKnown: 'noch nichts',
    described: 'laut Beschreibung',
    readAt: (when) => `gelesen ${when}`,
    minimum: 'Mindestens',
    firmwareNow: 'Firmware, wie das Gerät sie zeigt',
    below: (level, minimum) =>
      `${level} liegt unter ${minimum}, dem niedrigsten Stand, den dieser Betrieb annimmt. Aktualisiere jetzt nicht: Das ist eine eigene Änderung, die zuerst angesagt wird.`,
    same: (value) => `Immer noch ${value}`,
    keepFirmware: 'Diese Firmware behalten',
    kept: '✓ Auf diesem Telefon',
    settingsLead:
      'Lies sie im Menü des Geräts ab. „=“ übernimmt den zuletzt bekannten Wert, nachdem du nachgesehen hast.',
    phase: 'Gelesen …',
    phases: {
      before: 'vor der offenen Änderung',
      after: 'nach der offenen Änderung',
      apart: 'unabhängig davon',
    },
    noSettings: 'Von diesem Gerät ist noch keine Einstellung bekannt. Füg die erste hinzu.',
    notKnownYet: 'Neu in diesem Ticket',
    asBefore: (key) => `${key} ist wie vorher`,
    another: 'Weitere Einstellung',
    anotherHint: 'Ihr Name, wie er im Menü steht',
    addAnother: 'Diese Einstellung hinzufügen',
    notAll: (keys) => `Vorher und nachher werden Einstellung für Einstellung verglichen. Noch leer: ${keys}.`,
    keepSettings: (count) =>
      count === 0
        ? 'Behalten'
        : plural('de', count, '1 Einstellung behalten', `${count} Einstellungen behalten`),
  },
});
