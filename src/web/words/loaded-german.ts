import { signal } from '@preact/signals';
import type { Language, MessageTerms } from '../../../shared/message/index.ts';
import { loadingOnce } from './loading-once.ts';

// German sentences and terms come as chunks of their own, so that nobody who reads English loads them.

type Loaded = { sentences: Language; terms: MessageTerms };
const loaded = signal<Loaded | null>(null);

/** Has German loaded; resolves when it is there or can't be had now. */
export const allGerman: () => Promise<void> = loadingOnce(async () => {
  const { german, deTerms } = await import('../../../shared/message/de/index.ts');
  loaded.value = { sentences: german, terms: deTerms };
});

/** German, or null while it is not there yet; a screen that asks is drawn again when it is. */
export function loadedGerman(): Loaded | null {
  if (loaded.value === null) void allGerman();
  return loaded.value;
}
