import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { held, isAtEdge, oneLarger, scaledTo, type View } from '../../src/web/drawing/view.ts';

const number = fc.double({ min: -2000, max: 2000, noNaN: true });
const scale = fc.double({ min: 0.1, max: 12, noNaN: true });
const view = fc.record({ x: number, y: number, k: scale });
const atPoint = ({ x, y, k }: View, at: { x: number; y: number }) => ({
  x: (at.x - x) / k,
  y: (at.y - y) / k,
});

describe('the view of a drawing', () => {
  it('keeps the point it is enlarged at', () => {
    fc.assert(
      fc.property(view, scale, fc.record({ x: number, y: number }), (before, k, at) => {
        const [one, other] = [atPoint(before, at), atPoint(scaledTo(before, k, at), at)];
        expect(other.x).toBeCloseTo(one.x, 3);
        expect(other.y).toBeCloseTo(one.y, 3);
      }),
    );
  });

  it('never loses the drawing out of its window', () => {
    const [layout, window] = [
      { width: 900, height: 500 },
      { width: 340, height: 460 },
    ];
    fc.assert(
      fc.property(view, (wanted) => {
        const { x, y, k } = held(wanted, layout, window);
        expect(x).toBeLessThanOrEqual(window.width / 2);
        expect(x + layout.width * k).toBeGreaterThanOrEqual(window.width / 2 - 1e-6);
        expect(y).toBeLessThanOrEqual(window.height / 2);
        expect(y + layout.height * k).toBeGreaterThanOrEqual(window.height / 2 - 1e-6);
        expect(k).toBe(wanted.k);
      }),
    );
  });

  it('comes to legible names in one step, and goes on from there', () => {
    expect(oneLarger(0.3, 2.5)).toBe(2.5);
    expect(oneLarger(2.5, 2.5)).toBe(3.75);
    expect(oneLarger(11, 2.5)).toBe(12);
  });

  it('leaves a finger to the page where the drawing ends', () => {
    const heights = { drawing: 400, window: 300 };
    expect(isAtEdge({ x: 0, y: 0, k: 1 }, 10, heights)).toBe(true);
    expect(isAtEdge({ x: 0, y: -50, k: 1 }, 10, heights)).toBe(false);
    expect(isAtEdge({ x: 0, y: -50, k: 1 }, -10, heights)).toBe(false);
    expect(isAtEdge({ x: 0, y: -100, k: 1 }, -10, heights)).toBe(true);
  });
});
