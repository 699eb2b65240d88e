import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { times } from '../../../../shared/isolation/wording.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section, table } from '../../../page/parts.ts';
import { inEnglish, placeWords } from './parts.ts';
import { moment } from './words.ts';

type Log = CaseFile['logs'][number];

/** What each log says of the fault: what it covers, what it shows at each occurrence, what comes before, its gaps. */
export function logSection(file: CaseFile): Html {
  if (file.logs.length === 0) return section('logs', 'What the logs say', none('No log was read.'));
  return section('logs', 'What the logs say', html`${file.logs.map((log) => oneLog(file, log))}`);
}

function oneLog(file: CaseFile, log: Log): Html {
  const device =
    log.deviceId === null ? '' : ` of ${placeWords(file, { kind: 'device', deviceId: log.deviceId })}`;
  const said = [
    log.span === null
      ? 'Nothing in it is tied to a time.'
      : `From ${moment(log.span.from)} to ${moment(log.span.to)}.`,
    inEnglish(log.coverage.sentence),
    ...log.precursors.filter(({ regular }) => regular).map(({ sentence }) => inEnglish(sentence)),
    ...unconfirmed(log),
    ...log.gaps.map(
      ({ from, lengthS, endsInRestart }) =>
        `Silent from ${moment(from)} for ${Math.round(lengthS / 60)} min${endsInRestart ? ', then a restart' : ''}.`,
    ),
    ...log.firmware.map(({ version }) => `It names firmware ${version}.`),
    ...log.notes.map(inEnglish),
  ];
  return html`<h3>${log.fileName ?? 'Log'}${device}</h3>${list(said)}${table(
    ['Occurrence', 'The log shows'],
    log.coverage.occurrences.map(({ at, status, shows }) => [
      `${at.slice(0, 10)} ${at.slice(11, 19)}`,
      shows === null
        ? statusWords[status]
        : `${inEnglish(shows.words)}, line ${shows.line}: ${shows.excerpt}`,
    ]),
  )}`;
}

const statusWords = {
  covered: 'nothing at that moment',
  inGap: 'nothing: the log is silent there',
  outside: 'nothing: the log does not reach there',
  noTimes: 'nothing: the log has no times',
};

function unconfirmed({ watches }: Log): string[] {
  const open = watches.flatMap(({ proposed }) => proposed).filter(({ recordedAs }) => recordedAs === null);
  return open.length === 0
    ? []
    : [
        `In watches the log shows the fault ${times(open.length)} more that nobody has confirmed: ${open
          .slice(0, 10)
          .map(({ at }) => `${at.slice(0, 10)} ${at.slice(11, 19)}`)
          .join(', ')}${open.length > 10 ? ' and later' : ''}.`,
      ];
}
