import { fullAudit } from '../../../shared/audit/full-audit.ts';
import { inEnglish, print, withSentences } from '../program/output.ts';
import type { Command } from '../program/program.ts';
import { readChain } from './read-chain.ts';

export const audit: Command = {
  name: 'audit',
  operands: 'FILE',
  summary:
    'What has to be right before looking for a fault makes sense; exit code 1 where something must be put right.',
  more: "By the usual figures; an organisation's own, and the firmware levels that it accepts, are with its server.",
  options: {
    strict: { help: 'exit code 1 for what should be put right, too' },
    json: { help: 'the findings as a JSON array' },
  },
  async run({ operands: [file = ''], isOn }) {
    const chain = await readChain(file);
    if (chain === null) return 1;
    const findings = fullAudit(chain, {}, {}, []);
    if (isOn('json')) await print(JSON.stringify(withSentences(findings), null, 1));
    else
      for (const { severity, placeName, text, whatToDo, cautions } of findings)
        await print(
          [
            `${severity}, ${inEnglish(placeName)}: ${inEnglish(text)}`,
            ...[whatToDo, ...cautions].map((said) => `  ${inEnglish(said)}`),
          ].join('\n'),
        );
    const isFailure = findings.some(
      ({ severity }) => severity === 'mustFix' || (severity === 'shouldFix' && isOn('strict')),
    );
    return isFailure ? 1 : 0;
  },
};
