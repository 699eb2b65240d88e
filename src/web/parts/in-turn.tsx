import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

const waiting: (() => void)[] = [];
let isRunning = false;

/** Each turn is a task of its own, so that a tap is answered between two of them. */
function next(): void {
  const turn = waiting.shift();
  isRunning = turn !== undefined;
  if (turn === undefined) return;
  turn();
  setTimeout(next);
}

function takeTurn(turn: () => void): () => void {
  waiting.push(turn);
  if (!isRunning) {
    isRunning = true;
    afterPaint(next);
  }
  return () => {
    const at = waiting.indexOf(turn);
    if (at >= 0) waiting.splice(at, 1);
  };
}

/** What is to be seen first is on the screen by then. A page in the background paints nothing to wait for. */
function afterPaint(then: () => void): void {
  if (document.visibilityState === 'visible')
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(then)));
  else setTimeout(then);
}

/**
 * A part of a long page that is not in sight when the page opens: drawn after what is, one part after the other. Until
 * then it takes the room of an empty part.
 */
export function InTurn({ children }: { children: ComponentChildren }) {
  const [isDrawn, setDrawn] = useState(false);
  useEffect(() => takeTurn(() => setDrawn(true)), []);
  return isDrawn ? children : <div class="in-turn" />;
}
