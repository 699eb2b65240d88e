import { effect, signal } from '@preact/signals';
import type { Language, MessageTerms } from '../../../shared/message/index.ts';
import { language } from './language.ts';

// German sentences and terms come as chunks of their own, so that nobody who reads English loads them.

type Loaded = { sentences: Language; terms: MessageTerms };
const loaded = signal<Loaded | null>(null);
let isAsked = false;

function askForGerman(): void {
  if (isAsked) return;
  isAsked = true;
  import('../../../shared/message/de/index.ts').then(
    ({ german, deTerms }) => {
      loaded.value = { sentences: german, terms: deTerms };
    },
    // Without a connection, and never read before: the next screen asks again.
    () => {
      isAsked = false;
    },
  );
}

// Read at once where the screens are German, so that it is there before the first plan is.
effect(() => {
  if (language.value === 'de') askForGerman();
});

/** German, or null while it is not there yet; a screen that asks is drawn again when it is. */
export function loadedGerman(): Loaded | null {
  if (loaded.value === null) askForGerman();
  return loaded.value;
}
