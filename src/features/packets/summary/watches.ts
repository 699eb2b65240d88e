import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Occurrence, Watch } from '../../../../shared/contract/triage.ts';
import {
  baselineWatches,
  minutesOf,
  occurrencesIn,
  occurrencesOf,
} from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { none, section, table } from '../../../page/parts.ts';
import { deviceWords, signature, struck } from './parts.ts';
import { spoken, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { exactMoment, joined, moment, nameOf } from './words.ts';

/**
 * How often the fault came in these watches, watches over time and tries apart; null where nothing was watched that
 * counts.
 */
export function rateWords(file: CaseFile, watches: readonly Watch[]): string | null {
  const t = wordsOf(file).watches;
  const ended = watches.filter((watch) => watch.endedAt !== null && watch.voided === null);
  const parts = (['time', 'trigger'] as const).flatMap((mode) => {
    const ofMode = ended.filter((watch) => watch.mode === mode);
    if (ofMode.length === 0) return [];
    const seen = occurrencesIn(ofMode).length;
    if (mode === 'trigger') {
      return [
        t.failed(
          seen,
          ofMode.reduce((sum, watch) => sum + watch.tries, 0),
        ),
      ];
    }
    const minutes = ofMode.reduce((sum, watch) => sum + minutesOf(watch), 0);
    const watched = spoken(file, (say) => say.minutesWatched(minutes));
    if (seen === 0) return [t.notSeen(watched)];
    const often = t.seen(
      spoken(file, (say) => say.times(seen)),
      watched,
    );
    return [minutes === 0 ? often : `${often} (${perHourWords(file, (seen * 60) / minutes)})`];
  });
  return parts.length === 0 ? null : parts.join('; ');
}

const perHourWords = (file: CaseFile, rate: number): string =>
  wordsOf(file).watches.perHour(spoken(file, (say) => say.number(Number(rate.toPrecision(2)))));

/** Of the watches of this round before any change. */
export function baselineWords(file: CaseFile): string {
  const t = wordsOf(file).watches;
  const before = baselineWatches(file.triage);
  const rate = rateWords(file, before);
  if (rate === null) return t.nothingWatched;
  return occurrencesIn(before).length === 0 ? t.baselineNotSeen(rate) : t.baselineSeen(rate);
}

/** Every watch with its rate, then every time the fault came. */
export function watchSection(file: CaseFile): Html {
  const t = wordsOf(file).watches;
  const { watches } = file.triage;
  if (watches.length === 0) return section('watches', t.title, none(t.none));
  return section(
    'watches',
    t.title,
    html`<p>${t.reproduced(baselineWords(file))}</p>`,
    table(
      t.heads,
      watches.map((watch, index) => watchRow(file, watch, index + 1)),
    ),
    html`<h3>${t.occurrences}</h3>`,
    table(
      t.occurrenceHeads,
      watches.flatMap((watch, index) =>
        watch.occurrences.map((seen) => occurrenceRow(file, { watch, number: index + 1 }, seen)),
      ),
    ) ?? none(t.noOccurrence),
  );
}

function watchRow(file: CaseFile, watch: Watch, number: number): (string | number | Html | null)[] {
  const t = wordsOf(file).watches;
  const { voided } = watch;
  const purpose = purposeWords(file, watch);
  return [
    number,
    voided === null ? purpose : struck(purpose, t.voided(voided.reason, signature(file, voided))),
    moment(watch.startedAt),
    watch.endedAt === null ? t.running : durationWords(file, minutesOf(watch)),
    howWords(file, watch),
    voided !== null
      ? null
      : watch.endedAt === null
        ? spoken(file, (say) => say.times(occurrencesOf(watch).length))
        : rateWords(file, [watch]),
    nameOf(file, watch.by),
  ];
}

type Numbered = { readonly watch: Watch; readonly number: number };

function occurrenceRow(file: CaseFile, { watch, number }: Numbered, seen: Occurrence) {
  const t = wordsOf(file).watches;
  const why = joined(
    [
      ...seen.corrections.map(({ was, reason }) => t.was(exactMoment(was), reason)),
      seen.withdrawn === null ? '' : t.withdrawnBecause(seen.withdrawn.reason),
      watch.voided === null ? '' : t.watchVoided,
    ],
    '; ',
  );
  const counts = seen.withdrawn === null && watch.voided === null;
  const inBrackets = why === '' ? '' : `(${why})`;
  return [
    number,
    exactMoment(seen.at),
    seen.durationS === null ? '' : `${spoken(file, (say) => say.number(seen.durationS ?? 0))} s`,
    seen.menu === null ? '' : valueWordsOf(file).menus[seen.menu],
    counts ? `${seen.description} ${inBrackets}` : struck(seen.description, inBrackets),
  ];
}

function purposeWords(file: CaseFile, watch: Watch): string {
  const t = wordsOf(file).watches;
  const purpose = valueWordsOf(file).purposes[watch.purpose];
  if (watch.menuDeviceId !== null) return t.menuUp(purpose, deviceWords(file, watch.menuDeviceId));
  const change = file.triage.changes.findIndex(({ id }) => id === watch.changeId);
  return change < 0 ? purpose : t.ofChange(purpose, change + 1);
}

function howWords(file: CaseFile, { mode, plannedMin, trigger }: Watch): string {
  const t = wordsOf(file).watches;
  if (mode === 'trigger') return t.byTrigger(trigger ?? t.triggerNotNamed);
  const planned = plannedMin === null ? '' : t.planned(spoken(file, (say) => say.minutesWatched(plannedMin)));
  return joined([t.overTime, planned], ', ');
}

/** A length of time a person watched: `42 min`, `1 h 40 min`. */
function durationWords(file: CaseFile, minutes: number): string {
  if (minutes < 1) return wordsOf(file).watches.underAMinute;
  const whole = Math.round(minutes);
  return whole < 100 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
