import { inEnglish, print, withSentences } from '../program/output.ts';
import type { Command } from '../program/program.ts';
import { readEdid } from './read-edid.ts';

export const check: Command = {
  name: 'check',
  operands: 'FILE...',
  summary: 'What is wrong with EDIDs; exit code 1 where any has an error.',
  options: {
    strict: { help: 'take warnings for errors' },
    json: { help: 'one JSON object a line' },
  },
  async run({ operands, isOn }) {
    let failures = 0;
    for (const file of operands) {
      const { decoded, isReadable } = await readEdid(file);
      const { problems } = decoded;
      const isFailure = problems.some(
        ({ severity }) => severity === 'error' || (severity === 'warning' && isOn('strict')),
      );
      if (isFailure) failures += 1;
      if (isOn('json')) {
        await print(JSON.stringify({ file, ok: !isFailure, problems: withSentences(problems) }));
        continue;
      }
      if (!isReadable) continue;
      for (const { severity, block, offset, text } of problems)
        await print(`${file}: ${severity}, block ${block}, byte ${offset}: ${inEnglish(text)}`);
      await print(`${file}: ${isFailure ? 'fails' : 'passes'}`);
    }
    return failures > 0 ? 1 : 0;
  },
};
