import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp, testPassword } from '../support/test-app.ts';

/** What was found at the edge once and has its test nowhere else; defects-table.ts has them all. */
describe('at the edge', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp('embedded', { trustProxy: 1 });
  });
  afterAll(() => test.close());

  const signIn = (email: string, password: string, forwarded = '192.0.2.1') =>
    test
      .request()
      .post('/auth/sign-in')
      .set('x-forwarded-for', forwarded)
      .send({ organisation: 'home-firm', email, password });

  it('a forged X-Forwarded-For changes nobody’s address', async () => {
    const statuses = [];
    // What the caller wrote stands first; the proxy adds whom it was called by.
    for (let count = 0; count < 60; count += 1)
      statuses.push(
        (await signIn('technician@home-firm.example', 'wrong', `203.0.113.${count}, 192.0.2.7`)).status,
      );
    expect(statuses.filter((status) => status === 401)).toHaveLength(5);
    expect(statuses.filter((status) => status === 429)).toHaveLength(55);
  });

  it('a sign-in is the same work whether the account exists', async () => {
    const timed = async (email: string, from: string): Promise<number> => {
      const begun = performance.now();
      expect((await signIn(email, 'not the password', from)).status).toBe(401);
      return performance.now() - begun;
    };
    expect((await signIn('support@home-firm.example', testPassword, '192.0.2.30')).status).toBe(200);
    const ratios = [];
    // Side by side, so that what else the machine does falls on both; the middle one, since single ones vary.
    for (let count = 0; count < 60; count += 1) {
      const there = () => timed('support@home-firm.example', `198.51.100.${count}`);
      const nowhere = () => timed(`nobody${count}@home-firm.example`, `198.51.100.${100 + count}`);
      const isFirst = count % 2 === 0;
      const [first, second] = [await (isFirst ? there() : nowhere()), await (isFirst ? nowhere() : there())];
      ratios.push(isFirst ? first / second : second / first);
    }
    const middle = ratios.toSorted((a, b) => a - b)[30] ?? 0;
    process.stdout.write(`sign-in, account there / not there: ${middle.toFixed(2)}\n`);
    expect(middle).toBeGreaterThan(0.75);
    expect(middle).toBeLessThan(1.33);
  });
});
