import type { Bundle, Fold } from './fold.ts';

/** Left upper corner and size, in units of the drawing. */
export type Box = { id: string; x: number; y: number; width: number; height: number };
export type Line = Bundle & {
  points: readonly { x: number; y: number }[];
  /** The room kept free for what is written on it. */
  label: Omit<Box, 'id'>;
};
/** A branch: its frame, the strip of it that holds its own words, and its devices. */
export type Branch = Fold & { frame: Box; head: Omit<Box, 'id'>; devices: readonly Box[] };
export type Layout = {
  width: number;
  height: number;
  direction: Direction;
  devices: readonly Box[];
  branches: readonly Branch[];
  lines: readonly Line[];
};
export type Direction = 'down' | 'across';
/** The window that a drawing has to fit into, CSS pixels. */
export type Window = { width: number; height: number };
/** On a cable its words stand above its signs, in units of the drawing. */
export const wordsHeight = 26;
export const signsHeight = 18;

/** Enlarged no further at first sight. */
const largestFit = 1.25;

/** How much a layout is scaled to lie in a window as a whole. */
export const fitScale = ({ width, height }: Layout, window: Window): number =>
  Math.min(largestFit, window.width / Math.max(1, width), window.height / Math.max(1, height));
