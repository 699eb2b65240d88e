import { generate } from 'lean-qr';

/** A text for a camera (ISO/IEC 18004), dark on light in every look, with the four modules of quiet around it. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const quiet = 4;
  const bitmap = generate(text);
  const side = bitmap.size + 2 * quiet;
  const dark = Array.from({ length: bitmap.size }, (_, y) =>
    Array.from({ length: bitmap.size }, (_, x) =>
      bitmap.get(x, y) ? `M${x + quiet} ${y + quiet}h1v1h-1z` : '',
    ).join(''),
  ).join('');
  return (
    <svg
      class="qr-code"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={label}
      shape-rendering="crispEdges"
    >
      <rect width={side} height={side} fill="#fff" />
      <path d={dark} fill="#000" />
    </svg>
  );
}
