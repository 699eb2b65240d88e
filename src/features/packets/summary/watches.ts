import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Occurrence, Watch } from '../../../../shared/contract/triage.ts';
import { minutesWatched, times } from '../../../../shared/isolation/wording.ts';
import { type Html, html } from '../../../page/html.ts';
import { none, section, table } from '../../../page/parts.ts';
import { placeWords } from './parts.ts';
import { durationWords, moment, nameOf, purposeWords } from './words.ts';

/** Occurrences that were not withdrawn. */
export const seenIn = (watch: Watch): Occurrence[] =>
  watch.occurrences.filter((occurrence) => occurrence.withdrawn === null);

const minutesOf = (watch: Watch): number =>
  watch.endedAt === null ? 0 : (Date.parse(watch.endedAt) - Date.parse(watch.startedAt)) / 60_000;

/** How often the fault came in these watches, watches over time and tries apart; null where nothing was watched. */
export function rateWords(watches: readonly Watch[]): string | null {
  const ended = watches.filter((watch) => watch.endedAt !== null);
  const parts = (['time', 'trigger'] as const).flatMap((mode) => {
    const ofMode = ended.filter((watch) => watch.mode === mode);
    if (ofMode.length === 0) return [];
    const seen = ofMode.flatMap(seenIn).length;
    if (mode === 'trigger') {
      const tries = ofMode.reduce((sum, watch) => sum + watch.tries, 0);
      return [`${seen} of ${tries} tries failed`];
    }
    const minutes = ofMode.reduce((sum, watch) => sum + minutesOf(watch), 0);
    if (seen === 0) return [`not seen in ${minutesWatched(minutes)}`];
    const perHour = minutes === 0 ? '' : ` (${Number(((seen * 60) / minutes).toPrecision(2))} an hour)`;
    return [`seen ${times(seen)} in ${minutesWatched(minutes)}${perHour}`];
  });
  return parts.length === 0 ? null : parts.join('; ');
}

/** Of the watches of this round before any change. */
export function baselineWords(file: CaseFile): string {
  const { triage } = file;
  const before = triage.watches.filter(
    (watch) =>
      triage.cameBackWatchIds.includes(watch.id) ||
      (watch.round === triage.round && (watch.purpose === 'reproduce' || watch.purpose === 'side')),
  );
  const rate = rateWords(before);
  if (rate === null) return 'No: nothing was watched yet.';
  return before.flatMap(seenIn).length === 0 ? `No: ${rate}.` : `Yes: ${rate}.`;
}

/** Every watch with its rate, then every time the fault came. */
export function watchSection(file: CaseFile): Html {
  const { watches } = file.triage;
  if (watches.length === 0) return section('watches', 'Watches', none('Nothing was watched yet.'));
  const numbers = new Map(watches.map((watch, index) => [watch.id, index + 1]));
  return section(
    'watches',
    'Watches',
    html`<p>Reproduced before any change? ${baselineWords(file)}</p>`,
    table(
      ['No.', 'For', 'Began', 'Lasted', 'How', 'Fault', 'By'],
      watches.map((watch) => [
        numbers.get(watch.id) ?? null,
        purposeOf(file, watch),
        moment(watch.startedAt),
        watch.endedAt === null ? 'still running' : durationWords(watch.startedAt, watch.endedAt),
        howWords(watch),
        watch.endedAt === null ? times(seenIn(watch).length) : rateWords([watch]),
        nameOf(file, watch.by),
      ]),
    ),
    html`<h3>Every time the fault came</h3>`,
    table(
      ['Watch', 'At', 'Lasted', 'Menu', 'What was seen'],
      watches.flatMap((watch) =>
        watch.occurrences.map((seen) => [
          numbers.get(watch.id) ?? null,
          `${seen.at.slice(0, 10)} ${seen.at.slice(11, 19)}`,
          seen.durationS === null ? '' : `${seen.durationS} s`,
          seen.menu,
          seen.withdrawn === null
            ? seen.description
            : `${seen.description} (withdrawn: ${seen.withdrawn.reason})`,
        ]),
      ),
    ) ?? none('It did not come in any watch.'),
  );
}

function purposeOf(file: CaseFile, watch: Watch): string {
  const purpose = purposeWords[watch.purpose];
  if (watch.menuDeviceId !== null) {
    return `${purpose}, menu of ${placeWords(file, { kind: 'device', deviceId: watch.menuDeviceId })} up`;
  }
  const change = file.triage.changes.findIndex(({ id }) => id === watch.changeId);
  return change < 0 ? purpose : `${purpose} (change ${change + 1})`;
}

function howWords(watch: Watch): string {
  const planned = watch.plannedMin === null ? '' : `, ${minutesWatched(watch.plannedMin)} planned`;
  return watch.mode === 'time' ? `over time${planned}` : `by trigger: ${watch.trigger ?? 'not named'}`;
}
