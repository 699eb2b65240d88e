import { parseArgs } from 'node:util';
import { readConfig, rotateTokenSecret } from '../config.ts';

/**
 * `npm run secret:rotate`: puts another token secret into the data folder, for the next start. With `--forget`, what
 * the ones before signed is refused from then on; else the one before is still taken until the next rotation.
 */
const { values } = parseArgs({ options: { forget: { type: 'boolean', default: false } } });
if ((process.env.HALFSPLIT_TOKEN_SECRET ?? '') !== '') {
  console.error(
    'HALFSPLIT_TOKEN_SECRET is set, so the data folder keeps none: set another one there, and this one as HALFSPLIT_OLD_TOKEN_SECRETS.',
  );
  process.exitCode = 1;
} else {
  const kept = rotateTokenSecret(readConfig(process.env).dataFolder, values);
  console.log(
    `Another secret signs from the next start on; ${kept === 1 ? 'all others are refused' : 'the one before is still taken'}.`,
  );
}
