/** A key that would change what an object is once its members are copied. */
export class BarredKey extends Error {}

/**
 * Reads JSON that a request brings elsewhere than in its body: in a field of a form, a header, a query. It takes no key
 * that the server does not take in a body.
 *
 * @throws SyntaxError for what is not JSON; BarredKey for `__proto__`, or a `constructor` with a `prototype`
 */
export const parsePlainJson = (text: string): unknown =>
  JSON.parse(text, (key, value: unknown) => {
    if (key === '__proto__' || (key === 'constructor' && hasPrototype(value)))
      throw new BarredKey(`the key ${key} is not taken`);
    return value;
  });

const hasPrototype = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, 'prototype');
