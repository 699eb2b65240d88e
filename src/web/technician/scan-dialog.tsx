import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Notice } from '../parts/notice.tsx';
import { wordsOf } from '../words/language.ts';

/** The part of the Shape Detection API that is used; TypeScript's own library does not have it. */
type Detector = { detect(image: ImageBitmapSource): Promise<{ rawValue: string }[]> };
declare const BarcodeDetector: new () => Detector;

/** Between two looks, milliseconds; assumed. */
const lookEveryMs = 250;
const t = wordsOf({
  en: {
    title: 'Scan a barcode',
    hold: 'Hold the camera over the code. Light helps.',
    found: 'Found:',
    take: (code: string) => `Take ${code}`,
    noCamera: 'The camera can’t be used here. Take a photo of the code instead.',
    photo: 'Read it from a photo',
    nothingFound: 'No code was found in that photo. Go closer, or type the number.',
  },
  de: {
    title: 'Strichcode scannen',
    hold: 'Halt die Kamera über den Code. Licht hilft.',
    found: 'Gefunden:',
    take: (code) => `${code} übernehmen`,
    noCamera: 'Die Kamera geht hier nicht. Mach stattdessen ein Foto vom Code.',
    photo: 'Aus einem Foto lesen',
    nothingFound: 'In dem Foto wurde kein Code gefunden. Geh näher heran, oder tipp die Nummer ein.',
  },
});

/** The camera's picture, and each code that is in it as a button: often several are printed side by side. */
export function ScanDialog({ onFound, onClose }: { onFound: (code: string) => void; onClose: () => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const [codes, setCodes] = useState<readonly string[]>([]);
  const [hasCamera, setCamera] = useState(true);
  const [isEmpty, setEmpty] = useState(false);
  const add = (found: readonly { rawValue: string }[]) =>
    setCodes((known) =>
      [...new Set([...known, ...found.map(({ rawValue }) => rawValue.trim())])].filter(Boolean),
    );
  useEffect(() => watchCamera(video.current, add, () => setCamera(false)), []);
  const readPhoto = async (file: File | undefined) => {
    if (file === undefined) return;
    const picture = await createImageBitmap(file).catch(() => null);
    const found = picture === null ? [] : await new BarcodeDetector().detect(picture).catch(() => []);
    picture?.close();
    setEmpty(found.length === 0);
    add(found);
  };
  return (
    <Dialog title={t().title} onClose={onClose}>
      {hasCamera ? (
        <>
          <p>{t().hold}</p>
          <video class="scan-picture" ref={video} muted playsInline aria-label={t().hold} />
        </>
      ) : (
        <Notice tone="caution">{t().noCamera}</Notice>
      )}
      <div role="status" class="stack">
        {codes.length > 0 && <strong>{t().found}</strong>}
        {codes.map((code) => (
          <Button key={code} kind="primary" large onClick={() => onFound(code)}>
            {t().take(code)}
          </Button>
        ))}
        {isEmpty && codes.length === 0 && <span>{t().nothingFound}</span>}
      </div>
      <label class="button capture-button">
        <input
          class="for-readers-only"
          type="file"
          accept="image/*"
          capture="environment"
          onChange={({ currentTarget }) => void readPhoto(currentTarget.files?.[0])}
        />
        {t().photo}
      </label>
    </Dialog>
  );
}

/** Looks at the camera's picture again and again. @returns what stops it and switches the camera off */
function watchCamera(
  video: HTMLVideoElement | null,
  onCodes: (found: { rawValue: string }[]) => void,
  onNoCamera: () => void,
): () => void {
  const detector = new BarcodeDetector();
  let stream: MediaStream | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;
  const look = async () => {
    if (video !== null && video.readyState >= video.HAVE_CURRENT_DATA) {
      const found = await detector.detect(video).catch(() => []);
      if (found.length > 0 && !isOver) onCodes(found);
    }
    if (!isOver) timer = setTimeout(() => void look(), lookEveryMs);
  };
  const start = async () => {
    const given = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
    // Closed while the browser was still asking.
    if (isOver || video === null) return stopStream(given);
    stream = given;
    video.srcObject = given;
    await video.play();
    await look();
  };
  if (navigator.mediaDevices === undefined) onNoCamera();
  else void start().catch(onNoCamera);
  return () => {
    isOver = true;
    clearTimeout(timer);
    if (stream !== null) stopStream(stream);
  };
}

const stopStream = (stream: MediaStream): void => {
  for (const track of stream.getTracks()) track.stop();
};
