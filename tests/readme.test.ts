import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readmeTables, withTables } from '../src/cli/readme-tables.ts';
import { openTestApp } from './support/test-app.ts';

it('prints the roles, commands and routes that the code has (npm run readme:tables writes them)', async () => {
  const test = await openTestApp('embedded');
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const tables = readmeTables(test.app);
  expect(tables.api).toContain('/tickets/{id}/commands');
  expect(readme).toBe(withTables(readme, tables));
  await test.close();
});
