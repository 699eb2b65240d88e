import { beforeEach } from 'vitest';
import { takeDiaries } from './page-diary.ts';

/** A test that fails says what its pages were about; a screen that never comes is seldom seen twice. */
beforeEach(async ({ onTestFailed }) => {
  await takeDiaries();
  onTestFailed(async () => void process.stderr.write(`${await takeDiaries()}\n`));
});
