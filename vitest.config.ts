import { defineConfig } from 'vitest/config';

/** Checks that ask a program which `npm ci` does not bring; .ci/run installs it. */
const asksReferencePrograms = [
  'tests/outside/{backup,edid,edid-formats,edid-varied,export,timings,packet}.test.ts',
  'tests/readme-tour.test.ts',
];
/**
 * What tells a case in sentences: packets, plans, logs, the record, the client. The other features answer with codes that
 * these too come from, and running all of them once more takes five minutes. tests/message is about the sentences.
 */
const saysSomething = [
  'tests/features/{packets,planning,log-findings,ticket-record,reference}/**/*.test.ts',
  'tests/http/language.test.ts',
  'tests/web/**/*.test.ts',
];
/** Explorations that take long and say nothing. */
const longAndSilent = [
  'tests/state-machines/triage/exploration.test.ts',
  'tests/state-machines/triage/walk{,-on}.test.ts',
  'tests/isolation/useless.test.ts',
];
/** Puts stand-ins in the place of modules, which would stand there for the next file too: it has its modules by itself. */
const withStandIns = ['tests/state-machines/triage/replay-computes-nothing.test.ts'];
const pure = ['tests/{audit,chain,isolation,logs,message,signal,state-machines}/**/*.test.ts'];
const saysSomethingPurely = ['tests/{audit,isolation,logs,state-machines}/**/*.test.ts'];
/** What keeps strangers out, and thousands of requests that nobody meant: by itself, since it takes minutes. */
const security = ['tests/security/**/*.test.ts'];
const slow = ['tests/slow/**/*.test.ts'];
const browser = ['tests/browser/**/*.test.ts'];
const limits = { testTimeout: 60_000, hookTimeout: 120_000 };
/** Files share what they import, since loading the server takes as long as most of them run: none may leave anything behind. */
const shared = { isolate: false };

export default defineConfig({
  test: {
    // Two cores are the least that this is worked on with; the usual number leaves one of them idle.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'main',
          include: ['tests/**/*.test.ts'],
          exclude: [...asksReferencePrograms, ...slow, ...browser, ...security, ...pure],
          ...shared,
          ...limits,
        },
      },
      { test: { name: 'pure', include: pure, exclude: withStandIns, ...shared, ...limits } },
      { test: { name: 'stand-ins', include: withStandIns, ...limits } },
      {
        test: {
          name: 'pseudo',
          include: saysSomething,
          exclude: longAndSilent,
          setupFiles: 'tests/support/pseudo-language.ts',
          // What is said does not hang on the database.
          env: { TEST_DATABASE_URL: '' },
          ...shared,
          ...limits,
        },
      },
      {
        test: {
          name: 'pseudo-pure',
          include: saysSomethingPurely,
          exclude: [...longAndSilent, ...withStandIns],
          setupFiles: 'tests/support/pseudo-language.ts',
          ...shared,
          ...limits,
        },
      },
      { test: { name: 'security', include: security, ...limits, testTimeout: 300_000 } },
      { test: { name: 'reference', include: asksReferencePrograms, ...limits, testTimeout: 300_000 } },
      {
        test: {
          name: 'slow',
          include: slow,
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: browser,
          globalSetup: 'tests/browser/plant-once.ts',
          setupFiles: 'tests/browser/tell-failures.ts',
          ...shared,
          testTimeout: 600_000,
          hookTimeout: 300_000,
          // A screen that comes late on a busy machine is not a screen that never comes.
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
  },
});
