import { writeFile } from 'node:fs/promises';
import { type Edid, encodeEdid } from '../../../shared/signal/edid/index.ts';
import { complain, print } from '../program/output.ts';
import { type ExitCode, type Given, type Option, UsageError } from '../program/program.ts';
import { programName } from './read-edid.ts';

/** How the bytes of an EDID are written; binary to a file and hexadecimal to a terminal or pipe, unless asked otherwise. */
export const writeOptions: Readonly<Record<string, Option>> = {
  out: { value: 'FILE', short: 'o', help: 'write into a file, binary unless --form says otherwise' },
  form: { value: 'FORM', help: 'hex, binary or base64' },
};

/** In lines of so many characters, the last one ended too. */
const inLines = (text: string, perLine: number): string =>
  `${text.match(new RegExp(`.{1,${perLine}}`, 'g'))?.join('\n') ?? ''}\n`;

const inForm: Readonly<Record<string, (bytes: Buffer) => string | Buffer>> = {
  hex: (bytes) => inLines(bytes.toString('hex'), 32),
  binary: (bytes) => bytes,
  base64: (bytes) => inLines(bytes.toString('base64'), 76),
};

/** Writes an EDID where and how `writeOptions` say. */
export async function writeEdid(edid: Edid, given: Given): Promise<ExitCode> {
  const file = given.valueOf('out');
  const write = inForm[given.valueOf('form') ?? (file === null ? 'hex' : 'binary')];
  if (write === undefined) throw new UsageError('--form is hex, binary or base64.');
  const content = write(Buffer.from(encodeEdid(edid)));
  if (file === null) {
    await print(typeof content === 'string' ? content.trimEnd() : content);
    return 0;
  }
  try {
    await writeFile(file, content);
    return 0;
  } catch (error) {
    complain(programName, `${file}: ${(error as Error).message}`);
    return 1;
  }
}
