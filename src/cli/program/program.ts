import { parseArgs } from 'node:util';
import { complain, stopWhenNobodyReads } from './output.ts';

/** What an option is for; `value` names what follows it, none where it is a switch. */
export type Option = { help: string; value?: string; short?: string };

/** What stands on a command line: a switch is true or left out, an option with a value its text. */
export type Given = {
  readonly operands: readonly string[];
  readonly isOn: (option: string) => boolean;
  readonly valueOf: (option: string) => string | null;
};

/** 0: done, and nothing is wrong. 1: what was asked is answered by no, or a file couldn't be read. */
export type ExitCode = 0 | 1;

export type Command = {
  name: string;
  /** `FILE...`: one or more; `A B`: as many as there are words. */
  operands: string;
  summary: string;
  /** Said by `--help` of the command alone, below its options. */
  more?: string;
  options: Readonly<Record<string, Option>>;
  /** @throws UsageError for words that are no request */
  run: (given: Given) => Promise<ExitCode>;
};

export type Program = { name: string; summary: string; commands: readonly Command[] };

/** Words on a command line that are no request: the program says so, with its usage, and ends with exit code 2. */
export class UsageError extends Error {}

const help: Option = { help: 'say this', short: 'h' };

/**
 * Runs the command that `words` ask for, and sets the exit code: 0 or 1 as the command says (`ExitCode`), 2 for words
 * that are no request. Help goes to the standard output and ends with 0; what is wrong with the words, to the standard
 * error.
 */
export async function runProgram(program: Program, words: readonly string[]): Promise<void> {
  stopWhenNobodyReads();
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    console.log(usageOfAll(program));
    return;
  }
  const command = program.commands.find((each) => each.name === name);
  try {
    if (command === undefined)
      throw new UsageError(name === undefined ? 'A command is missing.' : `There is no command ${name}.`);
    const given = parsed(command, rest);
    if (given === null) console.log(usageOf(program, command));
    else process.exitCode = await command.run(given);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    complain(program.name, error.message);
    console.error(command === undefined ? usageOfAll(program) : firstLine(program, command));
    process.exitCode = 2;
  }
}

/** Null where help is asked for. */
function parsed(command: Command, words: readonly string[]): Given | null {
  const options = { ...command.options, help };
  const { values, positionals } = parsedBy(options, words);
  if (values.help === true) return null;
  const wanted = command.operands.split(' ');
  const isEnough = command.operands.endsWith('...')
    ? positionals.length >= 1
    : positionals.length === wanted.length;
  if (!isEnough) throw new UsageError(`${command.operands} is wanted, and ${positionals.length} were given.`);
  if (positionals.filter((operand) => operand === '-').length > 1)
    throw new UsageError('The standard input can be read only once.');
  return {
    operands: positionals,
    isOn: (option) => values[option] === true,
    valueOf: (option) => {
      const value = values[option];
      return typeof value === 'string' ? value : null;
    },
  };
}

function parsedBy(options: Readonly<Record<string, Option>>, words: readonly string[]) {
  const shape = Object.fromEntries(
    Object.entries(options).map(([name, { value, short }]) => [
      name,
      { type: value === undefined ? ('boolean' as const) : ('string' as const), ...(short && { short }) },
    ]),
  );
  try {
    return parseArgs({ args: [...words], options: shape, allowPositionals: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

const firstLine = (program: Program, { name, operands, options }: Command): string =>
  `Usage: ${program.name} ${name}${Object.keys(options).length > 0 ? ' [OPTION...]' : ''} ${operands}`;

function usageOf(program: Program, command: Command): string {
  const rows = Object.entries({ ...command.options, help }).map(
    ([name, { help: text, value, short }]): [string, string] => [
      `${short ? `-${short}, ` : ''}--${name}${value ? ` ${value}` : ''}`,
      text,
    ],
  );
  return [
    firstLine(program, command),
    '',
    command.summary,
    '',
    ...inColumns(rows),
    ...(command.more ? ['', command.more] : []),
  ].join('\n');
}

const usageOfAll = ({ name, summary, commands }: Program): string =>
  [
    `Usage: ${name} COMMAND [OPTION...] FILE...`,
    '',
    summary,
    '',
    ...inColumns(commands.map((each) => [`${each.name} ${each.operands}`, each.summary])),
    '',
    `A FILE of - is the standard input. ${name} COMMAND --help says what a command takes.`,
    'Exit code: 0 done; 1 answered by no, or a file could not be read; 2 words that are no request.',
  ].join('\n');

function inColumns(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([left]) => left.length)) + 2;
  return rows.map(([left, right]) => `  ${left.padEnd(width)}${right}`);
}
