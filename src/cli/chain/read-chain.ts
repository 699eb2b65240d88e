import { chainFaults } from '../../../shared/chain/validate.ts';
import { type Chain, chain as chainSchema } from '../../../shared/contract/chain.ts';
import { fieldFaults } from '../../../shared/message/index.ts';
import { readInput } from '../program/input.ts';
import { complain, inEnglish } from '../program/output.ts';

/** Several times what a chain of 200 devices with an EDID each has. */
const mostBytes = 8 * 1024 * 1024;

export const programName = 'chain';

/** The chain in a file; null where it holds none that could be stored, with everything that is wrong on the standard error. */
export async function readChain(file: string): Promise<Chain | null> {
  const input = await readInput(file, mostBytes);
  if (!input.ok) return refuse(file, [input.reason]);
  let given: unknown;
  try {
    given = JSON.parse(Buffer.from(input.content).toString('utf8'));
  } catch (error) {
    return refuse(file, [`this is no JSON: ${(error as Error).message}`]);
  }
  const document = insideReply(given);
  const parsed = chainSchema.safeParse(document);
  if (!parsed.success)
    return refuse(
      file,
      fieldFaults(parsed.error.issues, document).map(
        ({ pointer, ...said }) => `${pointer || 'the root'}: ${inEnglish(said)}`,
      ),
    );
  const faults = chainFaults(parsed.data);
  if (faults.length === 0) return parsed.data;
  return refuse(
    file,
    faults.map(({ pointer, said }) => `${pointer}: ${inEnglish(said)}`),
  );
}

const insideReply = (given: unknown): unknown =>
  typeof given === 'object' && given !== null && 'chain' in given ? given.chain : given;

function refuse(file: string, reasons: readonly string[]): null {
  for (const reason of reasons) complain(programName, `${file}: ${reason}`);
  return null;
}
