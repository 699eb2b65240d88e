/** A call's name in its address: two calls, in two tabs, are two forms. */
export const callId = (): string => crypto.randomUUID().slice(0, 8);
