import type { completenessCodes } from '../codes/completeness.ts';
import type { Sentences } from '../sentences.ts';

export const completenessDe: Sentences<typeof completenessCodes> = {
  auditNotReviewed: () => 'Die Prüfung der Kette wurde nicht durchgesehen.',
  whatChangedNotAsked: () => 'Es wurde nicht gefragt, was sich geändert hat, seit es zuletzt ging.',
  faultNotSeenBeforeChange: () => 'Keine Beobachtung hat den Fehler gesehen, bevor etwas geändert wurde.',
  workedWithoutSide: ({ reason }, say) => `Die Arbeit ging ohne Seite weiter: ${say.text(reason)}`,
  noRetestThatCounts: () =>
    'Keine Änderung hat einen Nachtest, der lang genug ist und sich ihr zuschreiben lässt, sodass er etwas sagt.',
  noChainAsFound: () =>
    'Die Kette ist nicht festgehalten wie vorgefunden, also ist kein Firmware-Stand bekannt.',
  noSettingsRead: () => 'Aus keinem Gerät wurden Einstellungen gelesen.',
  noCablePhotos: () => 'Es gibt keine Fotos von beiden Enden des verdächtigen Kabels und seinem Aufdruck.',
  noLogOfFault: () => 'Kein Protokoll deckt einen Moment ab, in dem der Fehler gesehen wurde.',
  firmwareNotKnown: ({ device }, say) =>
    `Der Firmware-Stand von ${say.place(device, 'dative')} ist nicht bekannt.`,
  settingsNotKnown: ({ device }, say) =>
    `Die Einstellungen von ${say.place(device, 'dative')} sind nicht bekannt.`,
  edidNotRead: ({ device }, say) =>
    `Das EDID am Eingang von ${say.place(device, 'dative')} wurde nicht ausgelesen.`,
  photosMissing: ({ cable, views }, say) =>
    `Es fehlen Fotos; ${say.place(cable)}: ${views.map(say.message).join(', ')}.`,
  viewSourceEnd: () => 'das Ende an der Quelle',
  viewSinkEnd: () => 'das andere Ende',
  viewLabel: () => 'das aufgedruckte Etikett',
};
