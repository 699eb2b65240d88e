import type { packetNewsCodes } from '../codes/packet-news.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { ValuesOf } from '../values.ts';

type Change = ValuesOf<(typeof packetNewsCodes)['news/changeKept']>;
const changeIs =
  (status: string) =>
  ({ change, place, verdict }: Change, say: Say): string =>
    `Change: ${say.change(change)}, ${say.place(place)}: ${status}${verdict === null ? '' : `, ${say.verdict(verdict)}`}.`;

export const packetNewsEn: Sentences<typeof packetNewsCodes> = {
  'news/requestAnswered': ({ request, answer }, say) => `Answered: ${say.text(request)} ${say.text(answer)}`,
  'news/evidenceAdded': ({ item }, say) => `Evidence added: ${say.message(item)}.`,
  'news/evidenceWithdrawn': ({ item, reason }, say) =>
    `Evidence withdrawn: ${say.message(item)}. ${say.text(reason)}`,
  'news/evidenceItem': ({ kind, of, reading, description, fileName }, say) =>
    [
      `${say.term('evidenceKind', kind)}${of === null ? '' : ` of ${say.place(of)}`}`,
      ...(reading === null ? [] : [say.message(reading)]),
      ...(description === null ? [] : [say.text(description)]),
      ...(fileName === null ? [] : [say.name(fileName)]),
    ].join(', '),
  'news/levelRead': ({ level }, say) => say.name(level),
  'news/noteRead': ({ text }, say) => say.text(text),
  'news/settingsCounted': ({ settings }, say) => `${settings} ${say.plural(settings, 'setting', 'settings')}`,
  'news/settingsRead': ({ settings }, say) => settings.map(say.message).join(', '),
  'news/settingRead': ({ setting, value }, say) => `${say.name(setting)}: ${say.name(value)}`,
  'news/watched': ({ watches, seen }, say) =>
    `${say.plural(watches, 'One more watch', `${watches} more watches`)}, in which the fault ${seen === 0 ? 'did not come' : `came ${say.times(seen)}`}.`,
  'news/reported': ({ reports }, say) =>
    `${say.plural(reports, 'One more occurrence', `${reports} more occurrences`)} reported by the client.`,
  'news/sideFound': ({ device, side }, say) => `Side found: ${say.side(side)} of ${say.place(device)}.`,
  'news/changeDeclared': changeIs('declared'),
  'news/changeInPlace': changeIs('in place'),
  'news/changeJudged': changeIs('judged'),
  'news/changePutBack': changeIs('put back'),
  'news/changeKept': changeIs('kept'),
  'news/changeWithdrawn': changeIs('withdrawn before it was made'),
  'news/waited': ({ kind, what }, say) => `Waited for: ${say.term('waitingKind', kind)}, ${say.text(what)}.`,
  'news/culpritNamed': ({ place }, say) => `Culprit named: ${say.place(place)}.`,
  'news/culpritWithdrawn': () => 'The culprit named before is withdrawn.',
  'news/remedyChosen': ({ what }, say) => `Remedy: ${say.text(what)}`,
  'news/noteBy': ({ name, text }, say) => `Note by ${say.name(name)}: ${say.text(text)}`,
  'news/noLongerMissing': ({ item }, say) => `No longer missing: ${say.term('completenessItem', item)}.`,
  'news/waivedNow': ({ item }, say) => `Waived now: ${say.term('completenessItem', item)}.`,
};
