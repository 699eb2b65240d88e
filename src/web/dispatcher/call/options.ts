/** A list of the contract as options to choose from. */
export const optionsOf = <Value extends string>(values: readonly Value[], names: Record<Value, string>) =>
  values.map((value) => ({ value, label: names[value] }));
