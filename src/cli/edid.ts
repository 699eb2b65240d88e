import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { english } from '../../shared/message/en/index.ts';
import { type Message, message, messageText } from '../../shared/message/index.ts';
import {
  type DecodedEdid,
  decodeEdid,
  type EdidSummary,
  readableText,
  readEdidInput,
  summarise,
} from '../../shared/signal/edid/index.ts';

/**
 * Prints what EDID files say: one JSON object a line (`EdidSummary` with `file` in front), or text for a person.
 * Exit code 2 when the words on the command line are no request, 1 when a file couldn't be read at all, else 0, however
 * broken an EDID is.
 */
const usage = 'Usage: npm run -s edid -- decode [--text] FILE...';

type Request = { files: string[]; asText: boolean };

/** Null for words that are no request; `--` ends the options, for files whose names begin with a dash. */
function parse(words: string[]): Request | null {
  try {
    const options = { text: { type: 'boolean', default: false } } as const;
    const { values, positionals } = parseArgs({ args: words, options, allowPositionals: true });
    const [command, ...files] = positionals;
    return command === 'decode' && files.length > 0 ? { files, asText: values.text } : null;
  } catch {
    return null;
  }
}

async function decodeFile(file: string): Promise<{ decoded: DecodedEdid; readable: boolean }> {
  try {
    const { bytes, notes } = readEdidInput(await readFile(file));
    const decoded = decodeEdid(bytes);
    const skipped = notes.map((text) => ({ severity: 'note' as const, block: 0, offset: 0, text }));
    return { decoded: { ...decoded, problems: [...skipped, ...decoded.problems] }, readable: true };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const text = message('edid/fileUnreadable', { reason });
    const problems = [{ severity: 'error' as const, block: 0, offset: 0, text }];
    return { decoded: { edid: null, blockCount: 0, checksumsValid: false, problems }, readable: false };
  }
}

const inEnglish = (said: Message): string => messageText(said, english, 'UTC');

/** What a program reads: each problem by its code and values, and as a sentence. */
function withSentences(decoded: DecodedEdid): EdidSummary {
  const problems = decoded.problems.map((problem) => ({
    ...problem,
    text: { ...problem.text, text: inEnglish(problem.text) },
  }));
  return summarise({ ...decoded, problems });
}

/** Waits for the reader of a pipe, so that thousands of lines never pile up in memory. */
function print(text: string): Promise<void> {
  return new Promise((resolve) => process.stdout.write(`${text}\n`, () => resolve()));
}

async function run({ files, asText }: Request): Promise<number> {
  let unreadable = 0;
  for (const file of files) {
    const { decoded, readable } = await decodeFile(file);
    if (!readable) unreadable += 1;
    const heading = files.length > 1 ? `${file}\n\n` : '';
    await print(
      asText
        ? heading + readableText(decoded, inEnglish)
        : JSON.stringify({ file, ...withSentences(decoded) }),
    );
  }
  return unreadable > 0 ? 1 : 0;
}

/** A reader that has seen enough, as `head` does, is no failure. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

const request = parse(process.argv.slice(2));
if (request) process.exitCode = await run(request);
else {
  console.error(usage);
  process.exitCode = 2;
}
