import { compareEdids } from '../../../shared/signal/edid/index.ts';
import { inEnglish, print, withSentences } from '../program/output.ts';
import type { Command } from '../program/program.ts';
import { readWholeEdid } from './read-edid.ts';

export const compare: Command = {
  name: 'compare',
  operands: 'A B',
  summary: 'How two EDIDs differ; exit code 1 where they do.',
  options: {
    'passed-on': { help: "A is the display's own, B what a device before it passes on" },
    json: { help: 'the differences as a JSON array' },
  },
  async run({ operands: [first = '', second = ''], isOn }) {
    const [a, b] = [await readWholeEdid(first), await readWholeEdid(second)];
    if (a === null || b === null) return 1;
    const differences = compareEdids(a, b, isOn('passed-on') ? 'passedOn' : 'overTime');
    if (isOn('json')) await print(JSON.stringify(withSentences(differences), null, 1));
    else for (const { text } of differences) await print(inEnglish(text));
    return differences.length > 0 ? 1 : 0;
  },
};
