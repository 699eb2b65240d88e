import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { UnattendedWatch } from '../../../../shared/contract/triage.ts';
import { reportedIn } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section, table } from '../../../page/parts.ts';
import { numberedChange } from './changes.ts';
import { linkTo } from './evidence.ts';
import { deviceWords, facts } from './parts.ts';
import { spoken, wordsOf } from './tongue.ts';
import { exactMoment, joined, moment, nameOf } from './words.ts';

/** Changes that stayed in between visits, while nobody watched: with whose yes, and what came meanwhile. */
export function leftInSection(file: CaseFile): Html | null {
  const { unattended } = file.triage;
  return unattended.length === 0
    ? null
    : section(
        'left-in',
        wordsOf(file).leftIn.title,
        html`${unattended.map((each) => oneLeftIn(file, each))}`,
      );
}

function oneLeftIn(file: CaseFile, watch: UnattendedWatch): Html {
  const t = wordsOf(file).leftIn;
  const { changeId, startedAt, until, endedAt, owner, clientsYes, by } = watch;
  const { name, at, whatChanges, howToUndo } = clientsYes;
  const to = endedAt ?? file.packet.createdAt;
  const reported = reportedIn(file.triage, { from: startedAt, to }).occurrences;
  return html`<article><h3>${numberedChange(file, changeId)}</h3>
    ${facts([
      [
        t.span,
        joined(
          [
            `${moment(startedAt)} – ${endedAt === null ? t.stillIn : moment(endedAt)}`,
            t.plannedUntil(moment(until)),
          ],
          ', ',
        ),
      ],
      [t.leftBy, nameOf(file, by)],
      [t.owner, owner],
      [t.clientsYes, `${name}, ${moment(at)}`],
      [t.whatChanges, whatChanges],
      [t.howToUndo, howToUndo],
      [t.reported, spoken(file, (say) => say.times(reported))],
      [t.logged, endedAt !== null && loggedWords(file, watch)],
      [t.firmware, endedAt !== null && firmwareWords(file, watch)],
    ])}</article>`;
}

/** What logs show of those days; that none was handed in is said, since it tells nothing. */
function loggedWords(file: CaseFile, { logged, startedAt, endedAt }: UnattendedWatch): Html | string {
  const t = wordsOf(file).leftIn;
  const filesOf = (evidenceId: string) => file.evidence.filter(({ id }) => id === evidenceId);
  const shown = list(
    logged.map(
      ({ occurredAt, evidenceId }) =>
        html`${exactMoment(occurredAt)}${filesOf(evidenceId).map((item) => html` (${linkTo(file, item)})`)}`,
    ),
  );
  if (shown !== null) return shown;
  const read = file.logs.some(
    ({ span }) => span !== null && span.from < (endedAt ?? '') && span.to > startedAt,
  );
  return read ? t.nothingLogged : t.noLog;
}

/** Levels before and after, where they differ or were not read both times. */
function firmwareWords(file: CaseFile, { firmwareBefore, firmwareAfter }: UnattendedWatch): Html | string {
  const { leftIn: t, notKnown } = wordsOf(file);
  const rows = firmwareBefore.flatMap(({ deviceId, level }) => {
    const after = firmwareAfter.find((each) => each.deviceId === deviceId)?.level ?? null;
    return level !== null && level === after
      ? []
      : [[deviceWords(file, deviceId), level ?? notKnown, after ?? notKnown]];
  });
  return table(t.firmwareHeads, rows) ?? t.sameFirmware;
}
