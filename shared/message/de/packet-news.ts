import type { packetNewsCodes } from '../codes/packet-news.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { ValuesOf } from '../values.ts';

type Change = ValuesOf<(typeof packetNewsCodes)['news/changeKept']>;
const changeIs =
  (status: string) =>
  ({ change, place, verdict }: Change, say: Say): string =>
    `Änderung: ${say.change(change)}, ${say.place(place)}: ${status}${verdict === null ? '' : `, ${say.verdict(verdict)}`}.`;

export const packetNewsDe: Sentences<typeof packetNewsCodes> = {
  'news/requestAnswered': ({ request, answer }, say) =>
    `Beantwortet: ${say.text(request)} ${say.text(answer)}`,
  'news/evidenceAdded': ({ item }, say) => `Neuer Beleg: ${say.message(item)}.`,
  'news/evidenceWithdrawn': ({ item, reason }, say) =>
    `Beleg zurückgezogen: ${say.message(item)}. ${say.text(reason)}`,
  'news/evidenceItem': ({ kind, of, reading, description, fileName }, say) =>
    [
      `${say.term('evidenceKind', kind)}${of === null ? '' : ` zu ${say.place(of, 'dative')}`}`,
      ...(reading === null ? [] : [say.message(reading)]),
      ...(description === null ? [] : [say.text(description)]),
      ...(fileName === null ? [] : [say.name(fileName)]),
    ].join(', '),
  'news/levelRead': ({ level }, say) => say.name(level),
  'news/noteRead': ({ text }, say) => say.text(text),
  'news/settingsCounted': ({ settings }, say) =>
    `${settings} ${say.plural(settings, 'Einstellung', 'Einstellungen')}`,
  'news/settingsRead': ({ settings }, say) => settings.map(say.message).join(', '),
  'news/settingRead': ({ setting, value }, say) => `${say.name(setting)}: ${say.name(value)}`,
  'news/watched': ({ watches, seen }, say) =>
    `${say.plural(watches, 'Eine Beobachtung mehr', `${watches} Beobachtungen mehr`)}; der Fehler kam darin ${seen === 0 ? 'nicht' : say.times(seen)}.`,
  'news/reported': ({ reports }, say) =>
    `${say.plural(reports, 'Ein Vorkommen', `${reports} Vorkommen`)} mehr, vom Kunden gemeldet.`,
  'news/sideFound': ({ device, side }, say) =>
    `Seite gefunden: ${say.side(side)} ${say.place(device, 'dative')}.`,
  'news/changeDeclared': changeIs('angesagt'),
  'news/changeInPlace': changeIs('eingebaut'),
  'news/changeJudged': changeIs('bewertet'),
  'news/changePutBack': changeIs('zurückgebaut'),
  'news/changeKept': changeIs('behalten'),
  'news/changeWithdrawn': changeIs('zurückgenommen, bevor sie gemacht wurde'),
  'news/waited': ({ kind, what }, say) =>
    `Gewartet auf: ${say.term('waitingKind', kind)}, ${say.text(what)}.`,
  'news/culpritNamed': ({ place }, say) => `Ursache benannt: ${say.place(place)}.`,
  'news/culpritWithdrawn': () => 'Die zuvor benannte Ursache ist zurückgenommen.',
  'news/remedyChosen': ({ what }, say) => `Abhilfe: ${say.text(what)}`,
  'news/noteBy': ({ name, text }, say) => `Notiz von ${say.name(name)}: ${say.text(text)}`,
  'news/noLongerMissing': ({ item }, say) => `Fehlt nicht mehr: ${say.term('completenessItem', item)}.`,
  'news/waivedNow': ({ item }, say) => `Jetzt weggelassen: ${say.term('completenessItem', item)}.`,
};
