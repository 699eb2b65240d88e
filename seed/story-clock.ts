/** A clock that a story moves: the demo's hours pass without anybody waiting for them. */
export type StoryClock = { now(): Date; to(moment: Date): void; backToReal(): void };

export function storyClock(): StoryClock {
  let told: Date | null = null;
  return {
    now: () => told ?? new Date(),
    to: (moment) => {
      told = moment;
    },
    backToReal: () => {
      told = null;
    },
  };
}
