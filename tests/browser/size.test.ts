import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStage, type Stage, signInOn } from './stage.ts';

/** Issue: at most 90 KB of JavaScript, compressed, for the technician's route. */
const budgetBytes = 90_000;

describe('the first load', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());

  it('brings at most 90 KB of compressed JavaScript for a visit with its drawing', async () => {
    // What a device fetches ahead, to keep it, is no part of the first load.
    const context = await stage.openDevice('phone', 'light', 'fetched');
    const signIn = await context.newPage();
    await signInOn(signIn, 'brask');
    const href = await signIn.getByRole('main').getByRole('link').first().getAttribute('href');
    const page = await context.newPage();
    await page.goto(href ?? '');
    await page.getByRole('group', { name: /^Chain/ }).waitFor();
    const loaded = (await page.evaluate(`performance.getEntriesByType('resource')
      .filter(({ name }) => new URL(name).pathname.endsWith('.js'))
      .map(({ name, encodedBodySize, decodedBodySize }) => ({ name: new URL(name).pathname, encodedBodySize, decodedBodySize }))`)) as {
      name: string;
      encodedBodySize: number;
      decodedBodySize: number;
    }[];
    const total = loaded.reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0);
    process.stdout.write(
      `JavaScript of a first load of a visit: ${(total / 1000).toFixed(1)} KB compressed, ${loaded.length} files\n`,
    );
    expect(loaded.length).toBeGreaterThan(2);
    // Compressed indeed: the same budget would mean nothing for what is sent as it is.
    expect(total).toBeLessThan(loaded.reduce((sum, { decodedBodySize }) => sum + decodedBodySize, 0) / 2);
    expect(total).toBeLessThanOrEqual(budgetBytes);
  });
});
