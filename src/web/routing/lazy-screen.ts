import type { FunctionComponent } from 'preact';
import { lazy } from 'preact-iso';
import { allSentences } from '../words/loaded-language.ts';

/** A screen whose code can be fetched before it is gone to. */
export type LazyScreen = FunctionComponent & { preload(): Promise<unknown> };
type Load<Properties> = () => Promise<FunctionComponent<Properties>>;
type Parts = Partial<Record<string, string>>;

/** A screen that a phone begins with: it comes without what `en/first.ts` has no sentences for. */
export const firstScreen = <Properties extends Parts>(load: Load<Properties>): LazyScreen =>
  lazy(load) as unknown as LazyScreen;

/**
 * A screen that is loaded when it is first gone to, with every sentence there is in the language of the screens. The
 * parts of its address (`:id`) are its properties.
 */
export const lazyScreen = <Properties extends Parts>(load: Load<Properties>): LazyScreen =>
  firstScreen(async () => {
    const [screen] = await Promise.all([load(), allSentences()]);
    return screen;
  });
