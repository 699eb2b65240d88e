import { useEffect, useRef } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { reportWords } from './report-words.ts';
import { paint, pictureWidth, pointIn, type Stroke, widthToHeight } from './strokes.ts';

/** A field to sign in with a finger, a pen or a mouse. Whoever can't draw signs by name, beside it. */
export function SignatureField({
  strokes,
  onChange,
}: {
  strokes: readonly Stroke[];
  onChange: (strokes: Stroke[]) => void;
}) {
  const t = reportWords();
  const canvas = useRef<HTMLCanvasElement>(null);
  const current = useRef<[number, number][] | null>(null);
  const repaint = (): void => {
    if (canvas.current === null) return;
    paint(canvas.current, current.current === null ? strokes : [...strokes, current.current]);
  };
  useEffect(repaint, [strokes]);
  const add = (event: PointerEvent): void => {
    if (current.current === null || canvas.current === null) return;
    current.current.push(pointIn(canvas.current.getBoundingClientRect(), event));
    repaint();
  };
  const end = (): void => {
    const drawn = current.current;
    current.current = null;
    if (drawn !== null && drawn.length > 1) onChange([...strokes, drawn]);
  };
  return (
    <div class="stack">
      <span class="soft">{t.drawHere}</span>
      <canvas
        ref={canvas}
        class="signature-field"
        width={pictureWidth}
        height={pictureWidth / widthToHeight}
        role="img"
        aria-label={strokes.length === 0 ? t.drawHere : t.drawn}
        onPointerDown={(event) => {
          canvas.current?.setPointerCapture(event.pointerId);
          current.current = [];
          add(event);
        }}
        onPointerMove={add}
        onPointerUp={end}
        onPointerCancel={end}
      />
      {strokes.length > 0 && (
        <div>
          <Button onClick={() => onChange([])}>{t.wipe}</Button>
        </div>
      )}
    </div>
  );
}
