import { readFile } from 'node:fs/promises';
import { decodeEdid, readEdidInput, summarise } from '../../shared/signal/edid/index.ts';

const usage = 'Usage: npm run -s edid -- decode [--text] FILE...';

type Outcome = { line: string; readable: boolean };

async function describe(file: string): Promise<Outcome> {
  const content = await readFile(file);
  const input = readEdidInput(content);
  return { line: JSON.stringify({ file, ...summarise(decodeEdid(input.bytes)) }), readable: true };
}

async function main(args: string[]): Promise<number> {
  const [command, ...files] = args;
  if (command !== 'decode' || files.length === 0) { console.error(usage); return 1; }
  for (const f of files) console.log((await describe(f)).line);
  return 0;
}

process.exitCode = await main(process.argv.slice(2));
