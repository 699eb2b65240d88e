import { readInput } from '../program/input.ts';
import { complain } from '../program/output.ts';
import type { Command } from '../program/program.ts';
import { programName } from './read-edid.ts';
import { treeFromJson } from './tree-json.ts';
import { writeEdid, writeOptions } from './write-edid.ts';

/** A tree of 256 blocks has two to three megabytes. */
const mostBytes = 8 * 1024 * 1024;

export const encode: Command = {
  name: 'encode',
  operands: 'FILE',
  summary: 'An EDID from the fields that decode --tree prints.',
  more:
    'Header, counts and checksums come out right. A part with exactBytes is written as those say: take them out of a part\n' +
    'of which a field is to change. Fields that no EDID can hold are refused, with their place.',
  options: writeOptions,
  async run(given) {
    const file = given.operands[0] ?? '';
    const input = await readInput(file, mostBytes);
    const tree = input.ok ? treeFromJson(Buffer.from(input.content).toString('utf8')) : input;
    if (tree.ok) return writeEdid(tree.edid, given);
    complain(programName, `${file}: ${tree.reason}`);
    return 1;
  },
};
