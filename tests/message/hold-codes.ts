import { readFileSync, writeFileSync } from 'node:fs';
import { codes } from '../../shared/message/codes/index.ts';

// Adds what is new to the list of codes that events may hold. What is in it stays as it is.
const list = new URL('./held-codes.json', import.meta.url);
const held = JSON.parse(readFileSync(list, 'utf8')) as Record<string, unknown>;
const all = Object.entries({ ...codes, ...held }).toSorted(([one], [other]) => (one < other ? -1 : 1));
writeFileSync(list, `${JSON.stringify(Object.fromEntries(all), null, 2)}\n`);
