import { type Chain, chain as chainForm } from '../../shared/contract/chain.ts';

/** A chain of so many devices, a third of them sources and displays, wired at random but without loops. */
export function bigChain(count: number, seed: number): Chain {
  let state = seed >>> 0;
  const next = (below: number): number => {
    // Numerical Recipes' linear congruential generator, from memory; any spread will do here.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const roleOf = (at: number) => (at < count / 5 ? 'source' : at >= count - count / 6 ? 'display' : 'switch');
  const mode = { kind: 'tmds', maxCharacterRateMHz: 600 } as const;
  const devices = Array.from({ length: count }, (_, at) => ({
    id: `d${at}`,
    name: `Device number ${at} of many`,
    role: roleOf(at),
    ports: [
      ...(roleOf(at) === 'source'
        ? []
        : [{ id: 'in', label: 'IN', direction: 'input' as const, highestMode: mode }]),
      ...(roleOf(at) === 'display'
        ? []
        : [{ id: 'out', label: 'OUT', direction: 'output' as const, highestMode: mode }]),
    ],
  }));
  const links = devices.slice(1).flatMap(({ id, role }, before) => {
    if (role === 'source') return [];
    const from = next(before + 1);
    if (devices[from]?.role === 'display') return [];
    return [
      {
        id: `C${before}`,
        from: { deviceId: `d${from}`, portId: 'out' },
        to: { deviceId: id, portId: 'in' },
        construction: 'passiveCopper' as const,
        lengthM: 2,
      },
    ];
  });
  return chainForm.parse({ name: 'Many', devices, links });
}
