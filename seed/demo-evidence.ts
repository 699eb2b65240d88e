import sharp from 'sharp';

/** A drawn stand-in for a photo: a plain field with a caption, as JPEG bytes. Invented like all of the demo. */
export async function drawnPhoto(caption: string): Promise<Blob> {
  const picture = `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="640">
    <rect width="960" height="640" fill="#3a4048"/>
    <rect x="80" y="240" width="800" height="160" rx="24" fill="#d8d4c8"/>
    <text x="480" y="332" font-size="34" text-anchor="middle" font-family="sans-serif" fill="#1c1f24">${caption}</text>
  </svg>`;
  const bytes = await sharp(Buffer.from(picture)).jpeg({ quality: 82 }).toBuffer();
  return new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' });
}

/** The processor's log (RFC 5424) around the moments at which the fault came. */
export function processorLog(from: Date, to: Date, occurrences: readonly Date[]): Blob {
  const line = (at: Date, severity: number, text: string) =>
    `<${16 * 8 + severity}>1 ${at.toISOString()} np7 video 311 - - ${text}`;
  const heartbeats: [Date, string][] = [];
  for (let at = from.getTime(); at <= to.getTime(); at += 5 * 60_000) {
    heartbeats.push([new Date(at), line(new Date(at), 6, 'output A: link up, 3840x2160 24 Hz')]);
  }
  const faults = occurrences.flatMap((at): [Date, string][] => {
    const after = (seconds: number) => new Date(at.getTime() + seconds * 1000);
    return [
      [after(-2), line(after(-2), 4, 'output A: bit errors rising')],
      [at, line(at, 3, 'output A: sync lost')],
      [after(3), line(after(3), 5, 'output A: sync found')],
    ];
  });
  const lines = [...heartbeats, ...faults]
    .sort((a, b) => a[0].getTime() - b[0].getTime())
    .map(([, text]) => text);
  return new Blob([`${lines.join('\n')}\n`], { type: 'text/plain' });
}
