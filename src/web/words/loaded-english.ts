import { signal } from '@preact/signals';
import { firstEn } from '../../../shared/message/en/first.ts';
import { englishOf } from '../../../shared/message/en/say.ts';
import type { PartOfLanguage } from '../../../shared/message/index.ts';
import { loadingOnce } from './loading-once.ts';

// A first load brings the English of a visit's first screens. The rest is a chunk of its own, which every other screen
// waits for; a first screen that needs a sentence out of it shows an ellipsis, asks, and is drawn again.

const english = signal<PartOfLanguage>(
  englishOf({
    ...firstEn,
    unknownMessage: () => {
      void allEnglish();
      return '…';
    },
  }),
);

/** Has the rest of English loaded; resolves when it is there or can't be had now. */
export const allEnglish: () => Promise<void> = loadingOnce(async () => {
  const { laterEn } = await import('../../../shared/message/en/later.ts');
  english.value = englishOf({ ...firstEn, ...laterEn });
});

/** English as far as it is there; a screen that asks is drawn again when there is more. */
export const loadedEnglish = (): PartOfLanguage => english.value;
