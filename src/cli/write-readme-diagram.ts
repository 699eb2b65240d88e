import { readFileSync, writeFileSync } from 'node:fs';
import { withDiagram } from './readme-diagram.ts';

/** Brings README's diagram of a ticket's states up to date with the machine; a test fails while it is not. */
const readme = new URL('../../README.md', import.meta.url);
writeFileSync(readme, withDiagram(readFileSync(readme, 'utf8')));
