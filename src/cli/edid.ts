#!/usr/bin/env node
import { check } from './edid/check.ts';
import { compare } from './edid/compare.ts';
import { decode } from './edid/decode.ts';
import { encode } from './edid/encode.ts';
import { limit } from './edid/limit.ts';
import { programName } from './edid/read-edid.ts';
import { runProgram } from './program/program.ts';

const program = {
  name: programName,
  summary: 'Reads, checks, compares, limits and writes EDIDs: binary, hexadecimal in any dump, or base64.',
  commands: [decode, check, compare, limit, encode],
};

await runProgram(program, process.argv.slice(2));
