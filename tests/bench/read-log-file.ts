import { createReadStream } from 'node:fs';
import { compileClock, readLog } from '../../shared/logs/index.ts';

/** Reads one log file in a process of its own, so that its memory is its own too, and prints what it took as JSON. */
const [, , path] = process.argv;
if (path === undefined) throw new Error('Give the path of a log file.');

const compiled = compileClock({ zone: 'UTC', takenAt: '2026-11-25T12:00:00Z' });
if (!compiled.ok) throw new Error(compiled.why.code);

const rssBefore = process.memoryUsage.rss();
let rssPeak = rssBefore;
async function* watched(file: string): AsyncGenerator<Uint8Array> {
  let chunks = 0;
  for await (const chunk of createReadStream(file)) {
    yield chunk;
    // Asking takes a while itself, so not at every chunk: 16 of them are 1 MiB.
    chunks += 1;
    if (chunks % 16 === 0) rssPeak = Math.max(rssPeak, process.memoryUsage.rss());
  }
}
const begun = performance.now();
const reading = await readLog(watched(path), { clock: compiled.clock });
const seconds = (performance.now() - begun) / 1000;
rssPeak = Math.max(rssPeak, process.memoryUsage.rss());

console.log(
  JSON.stringify({
    seconds,
    rssGrowthMB: (rssPeak - rssBefore) / 1e6,
    bytes: reading.bytes,
    lines: reading.lines,
    unparsed: reading.unparsed,
    events: Object.values(reading.eventCounts).reduce((sum, count) => sum + count, 0),
  }),
);
