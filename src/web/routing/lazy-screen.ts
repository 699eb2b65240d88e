import type { FunctionComponent } from 'preact';
import { lazy } from 'preact-iso';

/** A screen whose code can be fetched before it is gone to. */
export type LazyScreen = FunctionComponent & { preload(): Promise<unknown> };

/** A screen that is loaded when it is first gone to. The parts of its address (`:id`) are its properties. */
export const lazyScreen = <Properties extends Partial<Record<string, string>>>(
  load: () => Promise<FunctionComponent<Properties>>,
): LazyScreen => lazy(load) as unknown as LazyScreen;
