/** What a finger draws, as points in thousandths of the field's width, each line on its own. */
export type Stroke = readonly (readonly [x: number, y: number])[];

/** The field is so much wider than high. */
export const widthToHeight = 3;
/** Assumed: a picture this wide, in pixels, prints a signature of 8 cm at 300 dpi. */
export const pictureWidth = 960;

/** A point on the screen as it is kept: within the field, in thousandths of its width. */
export function pointIn(
  { left, top, width }: { left: number; top: number; width: number },
  { clientX, clientY }: { clientX: number; clientY: number },
): [number, number] {
  const within = (value: number, most: number) => Math.min(most, Math.max(0, Math.round(value)));
  const scale = 1000 / width;
  return [within((clientX - left) * scale, 1000), within((clientY - top) * scale, 1000 / widthToHeight)];
}

/** Assumed: less than this, in thousandths of the field's width, is a slip of the finger and no signature. */
const leastLength = 60;

/** Whether something was drawn that can be meant as a signature. */
export function isDrawn(strokes: readonly Stroke[]): boolean {
  const lengths = strokes.map((stroke) =>
    stroke
      .slice(1)
      .reduce(
        (sum, [x, y], at) => sum + Math.hypot(x - (stroke[at]?.[0] ?? x), y - (stroke[at]?.[1] ?? y)),
        0,
      ),
  );
  return lengths.reduce((sum, length) => sum + length, 0) >= leastLength;
}

/** Draws them black on white, as they are kept and printed. */
export function paint(canvas: HTMLCanvasElement, strokes: readonly Stroke[], name = ''): void {
  const context = canvas.getContext('2d');
  if (context === null) return;
  const scale = canvas.width / 1000;
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  Object.assign(context, { strokeStyle: '#000', lineWidth: 5 * scale, lineCap: 'round', lineJoin: 'round' });
  for (const stroke of strokes) {
    context.beginPath();
    for (const [x, y] of stroke) context.lineTo(x * scale, y * scale);
    context.stroke();
  }
  if (name === '') return;
  Object.assign(context, { fillStyle: '#000', font: `${60 * scale}px sans-serif`, textBaseline: 'middle' });
  context.fillText(name, 40 * scale, canvas.height / 2, canvas.width - 80 * scale);
}

/** The signature as a PNG picture: what was drawn, or the name where nothing was. */
export async function signaturePicture(strokes: readonly Stroke[], name: string): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = pictureWidth;
  canvas.height = pictureWidth / widthToHeight;
  paint(canvas, strokes, strokes.length === 0 ? name : '');
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('no picture could be made')) : resolve(blob)),
      'image/png',
    ),
  );
}
