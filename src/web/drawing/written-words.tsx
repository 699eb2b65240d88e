import type { Box } from './fit.ts';
import { type Words, type WrittenLine, written } from './lettering.ts';

type Properties = {
  words: readonly Words[];
  /** In units of the drawing. */
  box: Omit<Box, 'id'>;
  /** Screen pixels a unit. */
  detail: number;
};
/** As much of some words as has room in a box at this scale, in its middle. */
export function WrittenWords({ words, box, detail }: Properties) {
  return <Lines lines={written(words, box.width * detail, box.height * detail)} box={box} detail={detail} />;
}

export function Lines({ lines, box, detail }: Omit<Properties, 'words'> & { lines: readonly WrittenLine[] }) {
  return (
    <>
      {lines.map(({ text, size, y, isBold, isFirst }) => (
        <text
          key={y}
          class={[isBold && 'drawing-name', !isFirst && 'drawing-beside'].filter(Boolean).join(' ')}
          x={box.x + box.width / 2}
          y={box.y + y / detail}
          font-size={size / detail}
        >
          {text}
        </text>
      ))}
    </>
  );
}
