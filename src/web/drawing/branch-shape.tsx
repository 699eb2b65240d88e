import type { ComponentChildren } from 'preact';
import type { Branch } from './fit.ts';
import { pressable } from './selectable.ts';
import { drawingWords } from './words.ts';
import { WrittenWords } from './written-words.tsx';

type Properties = {
  branch: Branch;
  detail: number;
  /** How many of what is in it are marked, in words. */
  marked: string;
  onOpen: () => void;
  children: ComponentChildren;
};
/** A branch that is folded: how many devices it has, and they themselves, small. Pressed, it opens. */
export function BranchShape({
  branch: { frame, head, deviceIds },
  detail,
  marked,
  onOpen,
  children,
}: Properties) {
  const t = drawingWords();
  return (
    <g class="drawing-branch">
      <g class="drawing-press" {...pressable(t.openBranch(deviceIds.length) + marked, onOpen)}>
        <rect
          class="drawing-frame"
          x={frame.x}
          y={frame.y}
          width={frame.width}
          height={frame.height}
          rx="8"
        />
      </g>
      {children}
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus */}
      <g aria-hidden="true">
        <WrittenWords words={[{ text: t.devices(deviceIds.length) + marked }]} box={head} detail={detail} />
      </g>
    </g>
  );
}
