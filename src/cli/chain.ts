#!/usr/bin/env node
import { audit } from './chain/audit.ts';
import { budget } from './chain/budget.ts';
import { programName } from './chain/read-chain.ts';
import { runProgram } from './program/program.ts';

const program = {
  name: programName,
  summary:
    'What can be said of a signal chain without a server. FILE is what GET /chains/{id} replies, or its field chain alone.',
  commands: [budget, audit],
};

await runProgram(program, process.argv.slice(2));
