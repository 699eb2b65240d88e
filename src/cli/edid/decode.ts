import { readableText, summarise } from '../../../shared/signal/edid/index.ts';
import { inEnglish, print, withSentences } from '../program/output.ts';
import { type Command, UsageError } from '../program/program.ts';
import { readEdid } from './read-edid.ts';
import { treeAsJson } from './tree-json.ts';

export const decode: Command = {
  name: 'decode',
  operands: 'FILE...',
  summary: 'What EDIDs say: one JSON object a line, or text for a person.',
  more: 'Ends with 0 however broken an EDID is, as long as its file can be read; check is stricter.',
  options: {
    text: { help: 'text for a person' },
    tree: { help: 'every field as JSON, in the form that encode reads' },
  },
  async run({ operands, isOn }) {
    if (isOn('text') && isOn('tree')) throw new UsageError('--text and --tree exclude each other.');
    let unread = 0;
    for (const file of operands) {
      const { decoded, isReadable } = await readEdid(file);
      if (!isReadable) unread += 1;
      if (isOn('text')) {
        const heading = operands.length > 1 ? `${file}\n\n` : '';
        if (isReadable) await print(heading + readableText(decoded, inEnglish));
      } else if (isOn('tree')) {
        if (isReadable) await print(JSON.stringify(treeAsJson(decoded.edid), null, 1));
      } else await print(JSON.stringify({ file, ...(withSentences(summarise(decoded)) as object) }));
    }
    return unread > 0 ? 1 : 0;
  },
};
