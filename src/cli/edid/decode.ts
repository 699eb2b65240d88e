import {
  type DecodedEdid,
  readableText,
  summarise,
  summariseSink,
  withoutNeedlessBytes,
} from '../../../shared/signal/edid/index.ts';
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
    const form = isOn('text') ? asText : isOn('tree') ? asTree : asFacts;
    let unread = 0;
    for (const file of operands) {
      const { decoded, isReadable } = await readEdid(file);
      if (!isReadable) unread += 1;
      if (form === asText && isReadable && operands.length > 1) await print(`${file}\n`);
      if (form === asFacts || isReadable) await print(form(decoded, file));
    }
    return unread > 0 ? 1 : 0;
  },
};

const asText = (decoded: DecodedEdid): string => readableText(decoded, inEnglish);

const asTree = ({ edid }: DecodedEdid): string =>
  JSON.stringify(edid && treeAsJson(withoutNeedlessBytes(edid)), null, 1);

const asFacts = (decoded: DecodedEdid, file: string): string => {
  const sink = decoded.edid && summariseSink(decoded.edid);
  return JSON.stringify({ file, ...(withSentences(summarise(decoded)) as object), sink });
};
