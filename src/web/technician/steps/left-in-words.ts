import { plural, wordsOf } from '../../words/language.ts';

/** Words of a change that stays in between visits, while nobody watches. */
export const leftInWords = wordsOf({
  en: {
    leave: 'Leave it in between visits',
    title: 'Leave the change in between visits',
    lead: 'For a fault that nobody can sit through. The client says in the diary when it comes; nothing else is changed meanwhile.',
    until: 'Until when?',
    owner: 'Who sees to it that it ends?',
    safety: 'Is any of this so?',
    safetyHint: 'A single yes, and it can’t be left in.',
    dangers: {
      liesAcrossFloor: 'Something lies across a floor',
      hangs: 'Something hangs',
      staysOpen: 'A rack, a box or a cover stays open',
      lacksCooling: 'Something lacks its cooling',
      defeatsProtection: 'Something that protects is put out of use',
    },
    yes: 'The client says yes',
    name: 'Who said yes?',
    whatChanges: 'What is different for them meanwhile?',
    howToUndo: 'How do they undo it?',
    howToUndoHint: 'In words that somebody without tools can follow.',
    firmware: 'Firmware now',
    firmwareHint:
      'Read from the devices. An update meanwhile would spoil the test; what can’t be read stays empty.',
    still: (level: string) => `Still ${level}`,
    missing: 'All of these have to be said.',
    send: 'It stays in until then',
    leftTitle: 'The change was left in',
    end: 'These days are over',
    endLead: 'Read the firmware again: what updated itself meanwhile can’t be told from the change.',
    settings: 'Settings now',
    settingsHint:
      'They were read before the change. Read them again: only so is it seen what else has changed.',
    settingsOf: (device: string) => `Read the settings of ${device}`,
    logs: 'The devices’ own logs',
    logsLead:
      'Fetch them from the devices that keep one, and hand them in: they were there when nobody watched.',
    logsHere: (count: number) =>
      count === 0
        ? 'No log of these days is here yet. Without one, only the client’s reports count.'
        : plural('en', count, 'One log of these days is here.', `${count} logs of these days are here.`),
    handIn: 'Hand in a log',
    aLog: 'Log',
    whichLog: 'Which log?',
    shownAt: 'When does the log show the fault?',
    shownHint: (zone: string) =>
      `One moment after the other, by the clock of the site (${zone}). If it never does, leave it empty.`,
    notOfDays: 'That is not a moment of these days.',
    note: 'Add this moment',
    notThis: 'Take away',
    undo: 'How the client undoes it',
    said: 'Said yes',
  },
  de: {
    leave: 'Bis zum nächsten Besuch drinlassen',
    title: 'Die Änderung zwischen Besuchen drinlassen',
    lead: 'Für einen Fehler, den niemand absitzen kann. Der Kunde sagt im Tagebuch, wann er kommt; sonst wird inzwischen nichts geändert.',
    until: 'Bis wann?',
    owner: 'Wer sorgt dafür, dass es endet?',
    safety: 'Trifft etwas davon zu?',
    safetyHint: 'Ein einziges Ja, und es kann nicht drinbleiben.',
    dangers: {
      liesAcrossFloor: 'Etwas liegt quer über einen Boden',
      hangs: 'Etwas hängt',
      staysOpen: 'Ein Rack, ein Gehäuse oder eine Abdeckung bleibt offen',
      lacksCooling: 'Etwas hat keine Kühlung mehr',
      defeatsProtection: 'Etwas, das schützt, ist außer Kraft',
    },
    yes: 'Der Kunde sagt Ja',
    name: 'Wer hat Ja gesagt?',
    whatChanges: 'Was ist für ihn inzwischen anders?',
    howToUndo: 'Wie macht er es rückgängig?',
    howToUndoHint: 'In Worten, denen man ohne Werkzeug folgen kann.',
    firmware: 'Firmware jetzt',
    firmwareHint:
      'An den Geräten abgelesen. Ein Update inzwischen würde den Test verderben; was sich nicht lesen lässt, bleibt leer.',
    still: (level) => `Immer noch ${level}`,
    missing: 'Das alles muss gesagt sein.',
    send: 'Bis dahin bleibt es drin',
    leftTitle: 'Die Änderung blieb drin',
    end: 'Diese Tage sind vorbei',
    endLead:
      'Lies die Firmware noch einmal ab: Was sich inzwischen selbst aktualisiert hat, lässt sich von der Änderung nicht trennen.',
    settings: 'Einstellungen jetzt',
    settingsHint:
      'Vor der Änderung wurden sie gelesen. Lies sie noch einmal: Nur so sieht man, was sich sonst geändert hat.',
    settingsOf: (device) => `Einstellungen von ${device} lesen`,
    logs: 'Die Protokolle der Geräte',
    logsLead:
      'Hol sie von den Geräten, die eines führen, und gib sie ab: Sie waren da, als niemand beobachtete.',
    logsHere: (count) =>
      count === 0
        ? 'Noch kein Protokoll dieser Tage ist da. Ohne eines zählt nur, was der Kunde meldet.'
        : plural(
            'de',
            count,
            'Ein Protokoll dieser Tage ist da.',
            `${count} Protokolle dieser Tage sind da.`,
          ),
    handIn: 'Protokoll abgeben',
    aLog: 'Protokoll',
    whichLog: 'Welches Protokoll?',
    shownAt: 'Wann zeigt das Protokoll den Fehler?',
    shownHint: (zone) =>
      `Ein Zeitpunkt nach dem anderen, nach der Uhr vor Ort (${zone}). Zeigt es ihn nie, bleibt es leer.`,
    notOfDays: 'Das ist kein Zeitpunkt dieser Tage.',
    note: 'Diesen Zeitpunkt hinzufügen',
    notThis: 'Wegnehmen',
    undo: 'So macht es der Kunde rückgängig',
    said: 'Ja gesagt hat',
  },
});
