import { type FrlRate, frlBitRateGbps, frlRates } from '../format/index.ts';

/** What one element of a link passes, on either kind of signal. */
export type Capacity = {
  /** TMDS, MHz; 0 when it passes nothing. */
  tmdsMHz: number;
  /** The fastest fixed rate; null when it passes none. */
  frl: FrlRate | null;
};

export const nothing: Capacity = { tmdsMHz: 0, frl: null };

/** Gbit/s of a fixed rate; 0 for none. */
export const frlGbps = (rate: FrlRate | null): number => (rate === null ? 0 : frlBitRateGbps(rate));

/** What two ends agree on: the fastest of the six rates within the lanes and the lane rate of both. */
export function commonRate(one: FrlRate | null, other: FrlRate | null): FrlRate | null {
  if (one === null || other === null) return null;
  const within = (rate: FrlRate, limit: FrlRate): boolean =>
    rate.lanes <= limit.lanes && rate.gbpsPerLane <= limit.gbpsPerLane;
  return frlRates.findLast((rate) => within(rate, one) && within(rate, other)) ?? null;
}

export const leastOf = (capacities: readonly Capacity[]): Capacity =>
  capacities.reduce((least, each) => ({
    tmdsMHz: Math.min(least.tmdsMHz, each.tmdsMHz),
    frl: commonRate(least.frl, each.frl),
  }));

/** Part of a capacity: the clock scaled, and the fastest rate whose lanes still run no faster than that. */
export function scaled({ tmdsMHz, frl }: Capacity, factor: number): Capacity {
  if (factor >= 1) return { tmdsMHz, frl };
  const within = frlRates.findLast(
    (rate) => rate.lanes <= (frl?.lanes ?? 0) && rate.gbpsPerLane <= (frl?.gbpsPerLane ?? 0) * factor,
  );
  return { tmdsMHz: tmdsMHz * factor, frl: within ?? null };
}
