import type { Chain } from '../../shared/contract/chain.ts';
import { cable, chainOf, display, matrixSwitch, receiver, source, splitter } from '../chain/build-chain.ts';

/**
 * A ladder of splitters and switches, of so many rungs: with 66, the largest chain that the contract takes, 200 devices
 * and 392 cables.
 */
export function largestChain(count = 66): Chain {
  const rungs = Array.from({ length: count }, (_, at) => at);
  const devices = rungs.flatMap((at) => [
    splitter(`split${at}`),
    receiver(`left${at}`),
    matrixSwitch(`join${at}`),
  ]);
  const within = rungs.flatMap((at) => [
    cable(`split${at}.out1`, `left${at}.in1`),
    cable(`split${at}.out2`, `join${at}.in2`),
    cable(`split${at}.out3`, `join${at}.in3`),
    cable(`left${at}.out1`, `join${at}.in1`),
  ]);
  // Those that a rung can do without come last, since not all have room.
  const beside = rungs.map((at) => cable(`left${at}.out2`, `join${at}.in4`));
  const onward = rungs.slice(1).map((at) => cable(`join${at - 1}.out1`, `split${at}.in1`));
  const ends = [cable('player.out1', 'split0.in1'), cable(`join${count - 1}.out1`, 'projector.in1')];
  return chainOf(
    [source('player'), ...devices, display('projector')],
    [...ends, ...onward, ...within, ...beside].slice(0, 392),
  );
}
