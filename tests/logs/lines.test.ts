import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnsOf } from '../../shared/logs/turn.ts';
import { heldBack } from './lines/held-back.ts';
import { heldBackOnce } from './lines/held-back-once.ts';
import { heldBackThrice } from './lines/held-back-thrice.ts';
import { heldBackTwice } from './lines/held-back-twice.ts';
import { scoreOf, sumOf } from './lines/score.ts';
import { tunedOn } from './lines/tuned-on.ts';
import { writtenFirst } from './lines/written-first.ts';

describe('lines that nothing was tuned to', () => {
  const { lines, found, wrongDirection, ordinary, falseAlarms } = sumOf(scoreOf(heldBack));

  it('are enough to tell', () => {
    expect(lines + ordinary).toBeGreaterThanOrEqual(150);
    expect(ordinary).toBeGreaterThanOrEqual(60);
  });

  it('are found in 85 of a hundred, none read the wrong way', () => {
    expect(found / lines).toBeGreaterThanOrEqual(0.85);
    expect(wrongDirection).toBe(0);
  });

  it('are left alone where they are ordinary, but for 5 of a hundred', () => {
    expect(falseAlarms / ordinary).toBeLessThanOrEqual(0.05);
  });
});

it.each(Object.entries({ tunedOn, writtenFirst, heldBackOnce, heldBackTwice, heldBackThrice }))(
  'the lines of %s are found in 95 of a hundred, none read the wrong way, none without need',
  (_, set) => {
    const { lines, found, wrongDirection, falseAlarms } = sumOf(scoreOf(set));
    expect(found / lines).toBeGreaterThanOrEqual(0.95);
    expect([wrongDirection, falseAlarms]).toEqual([0, 0]);
  },
);

const saysTurn = (text: string, turn: 'off' | 'on' | 'lower' | 'higher') => turnsOf(text).has(turn);

describe('a turn', () => {
  const arrows = ['->', ' -> ', '=>', ' to ', ' → '];
  const pairs = [
    ['high', 'low'],
    ['1', '0'],
    ['locked', 'unlocked'],
    ['present', 'absent'],
    ['connected', 'disconnected'],
  ] as const;
  const anyPair = fc.constantFrom(...pairs);
  const anyArrow = fc.constantFrom(...arrows);

  it('goes off one way and on the other, however it is written', () => {
    fc.assert(
      fc.property(anyPair, anyArrow, fc.boolean(), ([up, down], arrow, upper) => {
        const written = (from: string, to: string) => {
          const text = `state: ${from}${arrow}${to}`;
          return upper ? text.toUpperCase().replace(' TO ', ' to ') : text;
        };
        const [off, on] = [written(up, down), written(down, up)];
        expect([saysTurn(off, 'off'), saysTurn(off, 'on')]).toEqual([true, false]);
        expect([saysTurn(on, 'off'), saysTurn(on, 'on')]).toEqual([false, true]);
      }),
    );
  });

  it('of a figure goes the way of the figures', () => {
    const figure = fc.integer({ min: 1, max: 64 });
    fc.assert(
      fc.property(
        figure,
        figure,
        anyArrow,
        fc.constantFrom('', 'G', 'G4L', ' Gbps'),
        (from, to, arrow, unit) => {
          const text = `rate ${from}${unit}${arrow}${to}${unit}`;
          expect([saysTurn(text, 'lower'), saysTurn(text, 'higher')]).toEqual([to < from, to > from]);
        },
      ),
    );
  });

  it.each([
    ['hpd=0 (was 1)', 'off'],
    ['{"hpd":2,"from":0,"to":1}', 'on'],
    ['lock=N', 'off'],
    ['video detect: YES', 'on'],
    ['state LOCKED->SEARCH', 'off'],
    ['10g4l => 10g3l', 'lower'],
  ] as const)('is read out of %s', (text, turn) => {
    expect(saysTurn(text, turn)).toBe(true);
  });

  it.each(['sink on HDMI 1 was disconnected', 'switched from HDMI 1 to HDMI 2'])('is none in: %s', (text) => {
    expect([saysTurn(text, 'off'), saysTurn(text, 'on')]).toEqual([false, false]);
  });
});
