import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { deviceWords } from './parts.ts';
import { inWords, spoken, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { exactMoment, moment } from './words.ts';

type Log = CaseFile['logs'][number];

/** What each log says of the fault: what it covers, what it shows at each occurrence, what comes before, its gaps. */
export function logSection(file: CaseFile): Html {
  const t = wordsOf(file).logs;
  return section(
    'logs',
    t.title,
    file.logs.length === 0 ? none(t.none) : html`${file.logs.map((log) => oneLog(file, log))}`,
  );
}

function oneLog(file: CaseFile, log: Log): Html {
  const t = wordsOf(file).logs;
  const name = log.fileName ?? t.log;
  const said = [
    log.span === null ? t.noTimes : t.span(moment(log.span.from), moment(log.span.to)),
    inWords(file, log.coverage.sentence),
    ...log.precursors.filter(({ regular }) => regular).map(({ sentence }) => inWords(file, sentence)),
    ...notConfirmed(file, log),
    ...log.gaps.map(({ from, lengthS, endsInRestart }) =>
      (endsInRestart ? t.silentThenRestart : t.silent)(
        moment(from),
        spoken(file, (say) => say.lengthOfTime(Math.round(lengthS / 60))),
      ),
    ),
    ...log.firmware.map(({ version }) => t.firmware(version)),
    ...log.notes.map((note) => inWords(file, note)),
  ];
  return html`<h3>${log.deviceId === null ? name : t.of(name, deviceWords(file, log.deviceId))}</h3>${list(said)}${table(
    t.heads,
    log.coverage.occurrences.map(({ at, status, shows }) => [
      exactMoment(at),
      shows === null
        ? valueWordsOf(file).inLog[status]
        : t.shows(inWords(file, shows.words), shows.line, shows.excerpt),
    ]),
  )}`;
}

/** More moments than these are not named. */
const mostNamed = 10;

function notConfirmed(file: CaseFile, { watches }: Log): string[] {
  const t = wordsOf(file).logs;
  const open = watches.flatMap(({ proposed }) => proposed).filter(({ recordedAs }) => recordedAs === null);
  if (open.length === 0) return [];
  const named = open.slice(0, mostNamed).map(({ at }) => exactMoment(at));
  const moments = `${named.join(', ')}${open.length > mostNamed ? t.andLater : ''}`;
  return [
    t.notConfirmed(
      spoken(file, (say) => say.times(open.length)),
      moments,
    ),
  ];
}
