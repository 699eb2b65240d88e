import type { Chain, Device, Link, VideoFormat, WantedFormat } from '../../../shared/contract/chain.ts';
import { cable, chainOf, display, frl48, input, output, receiver, source } from '../../chain/build-chain.ts';
import { display18, display48, edidHex } from '../../signal/link-budget/build-edid.ts';
import { format } from '../../signal/link-budget/chains.ts';

export const hd60 = format(1080, 60, 'rgb', 8);
export const uhd30 = format(2160, 30, 'rgb', 8);
export const uhd60 = format(2160, 60, 'rgb', 8);
export const uhd120 = format(2160, 120, 'rgb', 10);

/** `of` with what the client wants to see through it. */
export const wanting = (of: Chain, ...wantedFormats: WantedFormat[]): Chain => ({ ...of, wantedFormats });

/** A source on a display by one cable, `L`; 18 Gbit/s each, and 2160p60 wanted. */
export const pair = (facts: Partial<Link> = {}, wanted: VideoFormat = uhd60): Chain =>
  wanting(
    chainOf([source('player'), display('tv')], [cable('player.out1', 'tv.in1', { id: 'L', ...facts })]),
    wanted,
  );

const fastSource = (id: string): Device =>
  source(id, { ports: [output('out1', { highestMode: frl48, contentProtection: '2.3' })] });
const fastDisplay = (id: string, edid: string | null): Device =>
  display(id, { ports: [input('in1', { highestMode: frl48, contentProtection: '2.3', edidHex: edid })] });

/** The same with a fixed rate link of 48 Gbit/s at both ends. */
export const fastPair = (facts: Partial<Link> = {}, wanted: VideoFormat = uhd120): Chain =>
  wanting(
    chainOf(
      [fastSource('console'), fastDisplay('tv', edidHex(display48))],
      [cable('console.out1', 'tv.in1', { id: 'L', category: 'ultraHighSpeed', ...facts })],
    ),
    wanted,
  );

/** A disc player of 18 Gbit/s (L1) and a console of 48 (L2) in a receiver and a television of 48 (L3). */
export function consoleAndPlayer(facts: Partial<Record<'L1' | 'L2' | 'L3', Partial<Link>>> = {}): Chain {
  const mode = { highestMode: frl48, setMode: frl48, contentProtection: '2.3' } as const;
  return wanting(
    chainOf(
      [
        source('player'),
        fastSource('console'),
        receiver('receiver', { ports: [input('in1', mode), input('in2', mode), output('out1', mode)] }),
        fastDisplay('tv', edidHex(display48)),
      ],
      [
        cable('player.out1', 'receiver.in1', { id: 'L1', ...facts.L1 }),
        cable('console.out1', 'receiver.in2', { id: 'L2', category: 'ultraHighSpeed', ...facts.L2 }),
        cable('receiver.out1', 'tv.in1', { id: 'L3', category: 'ultraHighSpeed', ...facts.L3 }),
      ],
    ),
    uhd60,
    uhd120,
  );
}

export const edid18 = edidHex(display18);
