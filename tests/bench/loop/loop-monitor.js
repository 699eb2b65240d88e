import { monitorEventLoopDelay } from 'node:perf_hooks';
import { isMainThread } from 'node:worker_threads';

// Loaded into the server's process (`--import`): tells by IPC how late its event loop was since it was asked last.
// Worker threads inherit what a process was started with, and are none of this.
if (isMainThread && process.send !== undefined) {
  const resolutionMs = 1;
  const delays = monitorEventLoopDelay({ resolution: resolutionMs });
  delays.enable();
  process.on('message', () => {
    const lateMs = (ns) => Math.max(0, ns / 1e6 - resolutionMs);
    process.send?.({
      p50Ms: lateMs(delays.percentile(50)),
      p99Ms: lateMs(delays.percentile(99)),
      maxMs: lateMs(delays.max),
      residentMB: process.memoryUsage.rss() / 1e6,
    });
    delays.reset();
  });
  process.channel?.unref();
}
