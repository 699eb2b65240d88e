import { percent } from '../words/percent.ts';
import type { Box } from './fit.ts';
import { markSigns, type Sign } from './marks.ts';
import { drawingWords } from './words.ts';

/** What a sign says beside its mark: how likely, or how many. */
const noteOf = ({ mark, chance, count }: Sign): string =>
  chance !== null ? percent(chance) : mark === 'evidence' && count > 1 ? String(count) : '';

/** The signs at a place in words, for whoever can't see them. */
export const saidOf = (signs: readonly Sign[]): string[] =>
  signs.map((sign) => `${drawingWords().marks[sign.mark]} ${noteOf(sign)}`.trim());

type Properties = { signs: readonly Sign[]; box: Omit<Box, 'id'> };

/** The signs at a place, side by side in the middle of a strip; as many as have room there. */
export function Signs({ signs, box }: Properties) {
  const size = box.height;
  const gap = size * 0.12;
  const shown: { sign: Sign; text: string; width: number; from: number }[] = [];
  let used = 0;
  for (const sign of signs) {
    const text = `${markSigns[sign.mark]} ${noteOf(sign)}`.trim();
    const width = size * (1 + 0.46 * (text.length - 1));
    if (used + width > box.width) break;
    shown.push({ sign, text, width, from: used });
    used += width + gap;
  }
  const left = box.x + (box.width - used + gap) / 2;
  return (
    <>
      {shown.map(({ sign, text, width, from }) => (
        <g key={sign.mark} class={`drawing-sign sign-${sign.mark}`}>
          <rect x={left + from} y={box.y} width={width} height={size} rx={size / 2} />
          <text x={left + from + width / 2} y={box.y + size * 0.76} font-size={size * 0.72}>
            {text}
          </text>
        </g>
      ))}
    </>
  );
}

/** How likely a suspect is, as a bar along its lower edge: the whole edge is certain. */
export function ChanceBar({ signs, box }: Properties) {
  const chance = signs.find(({ mark }) => mark === 'suspect')?.chance ?? null;
  if (chance === null) return null;
  const height = Math.min(6, box.height / 6);
  return (
    <rect
      class="drawing-chance"
      x={box.x}
      y={box.y + box.height - height}
      width={box.width * chance}
      height={height}
    />
  );
}
