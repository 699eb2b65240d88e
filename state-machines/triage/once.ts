/** What makes a value the first time it is asked for, and gives the same one afterwards. */
export function once<Value>(make: () => Value): () => Value {
  let made: { value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
