import { signal } from '@preact/signals';

/** A step that was picked on the drawing, until the form that directs one has taken it. `key` as testKey makes it. */
export const pickedStep = signal<{ readonly ticketId: string; readonly key: string } | null>(null);
