import { howSureByNow, judgeRetest, type WatchRecord } from '../../shared/isolation/index.ts';
import { whyNoMenuDevice } from '../../state-machines/triage/segment.ts';
import { homeCinema, withDevice } from '../chain/build-chain.ts';

const chain = withDevice(homeCinema(), 'streamer', { drawsMenu: false });

const watches: WatchRecord[] = [
  { mode: 'time', minutes: 60, occurrences: 0 },
  { mode: 'time', minutes: 60, occurrences: 1 },
  { mode: 'time', minutes: 60, occurrences: 12 },
  { mode: 'time', minutes: 7.5, occurrences: 1 },
  { mode: 'time', minutes: 600, occurrences: 0 },
  { mode: 'time', minutes: 600, occurrences: 2 },
  { mode: 'time', minutes: 0, occurrences: 1 },
  { mode: 'time', minutes: Number.NaN, occurrences: 1 },
  { mode: 'time', minutes: 60, occurrences: 1.5 },
  { mode: 'trigger', tries: 10, failures: 0 },
  { mode: 'trigger', tries: 10, failures: 9 },
  { mode: 'trigger', tries: 3, failures: 1 },
  { mode: 'trigger', tries: 40, failures: 1 },
  { mode: 'trigger', tries: 1, failures: 1 },
  { mode: 'trigger', tries: 1, failures: 2 },
  { mode: 'trigger', tries: 1.5, failures: 1 },
];

function saidOfRetests(): string[] {
  const options = [
    {},
    { sameTrigger: false },
    { occurrenceTimesMin: [1, 1.2, 1.4, 1.6, 40, 40.1, 40.2, 40.3, 40.4, 40.5, 40.6, 40.7] },
  ];
  return watches.flatMap((before) =>
    watches.flatMap((after) =>
      options.flatMap((option) => {
        const { reasons, warnings } = judgeRetest(before, after, option);
        return [...reasons, ...warnings, howSureByNow(before, after, option).sentence];
      }),
    ),
  );
}

/** Every word of shared code that is said by itself, whether or not the other ways of asking come to it. */
export function saidPieceByPiece(): Set<string> {
  const said = [
    ...saidOfRetests(),
    ...['streamer', 'nowhere'].flatMap((id) => whyNoMenuDevice(chain, id) ?? []),
  ];
  return new Set(said.filter((text) => text !== ''));
}
