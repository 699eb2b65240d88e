import { placeKey } from '../../../shared/chain/place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import {
  liesOverPicture,
  looksUntilSure,
  menuTells,
  noFaultFoundWatchMin,
  type Standing,
} from '../../../shared/isolation/index.ts';
import { minutesCounted } from '../counting.ts';
import { menuQualitiesAt } from '../looks.ts';
import { baselineWatches, occurrencesIn, occurrencesOf, standingSides } from '../record.ts';
import { menuDevicesLeft } from '../segment.ts';

/** All watches of this round with a device's menu up, those that were voided among them. */
const menuWatches = ({ watches, round }: TriageRecord, deviceId: string): Watch[] =>
  watches.filter(
    (watch) => watch.round === round && watch.purpose === 'side' && watch.menuDeviceId === deviceId,
  );

/** The menu of a device was seen to stay and to vanish: whatever it says next is not to be trusted. */
export function menuContradictsItself(record: TriageRecord, deviceId: string): boolean {
  const answers = new Set(
    menuWatches(record, deviceId).flatMap(({ occurrences }) => occurrences.map(({ menu }) => menu)),
  );
  return answers.has('stayed') && answers.has('vanished');
}

/** A menu was up for as long as it takes for the fault to show, and it didn't. */
export function menuStayedQuiet(record: TriageRecord, deviceId: string): boolean {
  const watches = menuWatches(record, deviceId).filter(({ voided }) => voided === null);
  if (occurrencesIn(watches).length > 0) return false;
  const watchedMin = watches.reduce((sum, watch) => sum + minutesCounted(record, watch), 0);
  const tries = watches.reduce((sum, watch) => sum + watch.tries, 0);
  const looks = watches.filter(({ mode, endedAt }) => mode === 'look' && endedAt !== null).length;
  return (
    watchedMin >= menuPatienceMin(record) - nearlyMin ||
    tries >= quietTries ||
    looks >= looksUntilSure(record.settings.risk)
  );
}

/** Tries with a menu up and without the fault after which it is taken not to come with that menu up; assumed. */
const quietTries = 10;
/** Nobody stands before a menu for longer than a working day; assumed. */
const longestMin = 480;
/** A watch that was planned for whole minutes, or ended a moment early, was long enough. */
const nearlyMin = 1;

/** Minutes after which a fault that comes as often as it was seen to would have come with a menu up. */
export function menuPatienceMin(record: TriageRecord): number {
  const seen = baselineWatches(record).filter(({ mode, purpose }) => mode === 'time' && purpose !== 'side');
  const watchedMin = seen.reduce((sum, watch) => sum + minutesCounted(record, watch), 0);
  const perHour = watchedMin > 0 ? (60 * seen.flatMap(occurrencesOf).length) / watchedMin : 0;
  const needed = noFaultFoundWatchMin(perHour > 0 ? perHour : record.symptom.perHour, record.settings.risk);
  return Math.min(longestMin, needed);
}

/** A menu vanished with the fault, and as far as is known this one would whatever is at fault. */
export function vanishedInVain(record: TriageRecord, chain: Chain, deviceId: string): boolean {
  if (liesOverPicture(record.symptom)) return false;
  const { survivesLossOfInput, keepsFormat } = menuQualitiesAt(record, chain, deviceId);
  const answers = menuWatches(record, deviceId)
    .flatMap(occurrencesOf)
    .map(({ menu }) => menu);
  const tells = survivesLossOfInput === 'yes' && keepsFormat !== 'unknown';
  return answers.includes('vanished') && !answers.includes('stayed') && !tells;
}

/** Of several sources only one plays; which, is known where one alone shows the fault. */
const isPlaying = ({ components, scope }: Standing['model'], deviceId: string): boolean =>
  components.known.get(placeKey({ kind: 'device', deviceId }))?.device?.role !== 'source' ||
  (scope.affected.length === 1 && scope.affected.includes(deviceId));

/**
 * Devices whose menu is worth putting up: where a menu tells anything of the fault, on the way that shows it, with
 * something that can be at fault on both sides, and not watched in vain in this round already.
 */
export function menusLeft(record: TriageRecord, chain: Chain, { model }: Standing): string[] {
  if (!menuTells.includes(record.symptom.kind)) return [];
  return menuDevicesLeft(chain, standingSides(record)).filter(
    (deviceId) =>
      isPlaying(model, deviceId) &&
      (liesOverPicture(record.symptom) ||
        menuQualitiesAt(record, chain, deviceId).survivesLossOfInput !== 'no') &&
      !vanishedInVain(record, chain, deviceId) &&
      model.scope.path.has(placeKey({ kind: 'device', deviceId })) &&
      !standingSides(record).some((side) => side.deviceId === deviceId) &&
      !menuContradictsItself(record, deviceId) &&
      !menuStayedQuiet(record, deviceId),
  );
}
