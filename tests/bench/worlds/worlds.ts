/** How a world differs from the table of figures. */
export type WorldKind = {
  name: string;
  /** Weights are off by up to this factor either way. `byHouse`: each house in its own way, `everywhere`: all alike. */
  priors: { factor: number; by: 'house' | 'everywhere' } | null;
  /** Effects are off by `effectSpread`, and some only thin the fault out. */
  effects: boolean;
  /** Share of faults that come in bursts, and only once warm. */
  bursts: number;
  warm: number;
  observersErr: boolean;
  /** Share of cases with two faults. */
  two: number;
  /** Share of causes that no part of the chain explains; null: as the table says. */
  outside: number | null;
  lowerRateSource: boolean;
};

const own: WorldKind = {
  name: 'own',
  priors: null,
  effects: false,
  bursts: 0,
  warm: 0,
  observersErr: false,
  two: 0,
  outside: null,
  lowerRateSource: false,
};
const byHouse = { factor: 3, by: 'house' } as const;

/** The twelve worlds of the bench. */
export const worlds: readonly WorldKind[] = [
  own,
  { ...own, name: 'priors off by house', priors: byHouse },
  { ...own, name: 'priors off everywhere', priors: { factor: 3, by: 'everywhere' } },
  { ...own, name: 'effects off and partial', effects: true },
  { ...own, name: 'bursts', bursts: 1 },
  { ...own, name: 'warm-up 30 %', warm: 0.3 },
  { ...own, name: 'misread and missed 5 %', observersErr: true },
  { ...own, name: 'two faults 5 %', two: 0.05 },
  { ...own, name: 'two faults always', two: 1 },
  { ...own, name: 'outside 15 %', outside: 0.15 },
  { ...own, name: 'a source of a lower rate', lowerRateSource: true },
  {
    name: 'everything at once',
    priors: byHouse,
    effects: true,
    bursts: 0.3,
    warm: 0.3,
    observersErr: true,
    two: 0.05,
    outside: 0.15,
    lowerRateSource: true,
  },
];

/** Two worlds that nothing is tuned to; they are looked at when a tuning is done. */
export const keptApart: readonly WorldKind[] = [
  {
    ...own,
    name: 'apart: weights off everywhere by 4, observers err, bursts in half',
    priors: { factor: 4, by: 'everywhere' },
    observersErr: true,
    bursts: 0.5,
  },
  {
    ...own,
    name: 'apart: effects off, outside a quarter, two faults in ten',
    effects: true,
    outside: 0.25,
    two: 0.1,
  },
];
