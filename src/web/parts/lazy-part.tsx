import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { frameWords } from '../words/frame.ts';

/** A part of a screen that is loaded when it is first drawn; the rest of the screen is there meanwhile. */
export function lazyPart<Properties extends object>(
  load: () => Promise<FunctionComponent<Properties>>,
): FunctionComponent<Properties> {
  return (properties) => {
    const [part, setPart] = useState<{ Part: FunctionComponent<Properties> } | null>(null);
    useEffect(() => {
      void load().then((Part) => setPart({ Part }));
    }, []);
    if (part === null) return <p role="status">{frameWords().loading} …</p>;
    return <part.Part {...properties} />;
  };
}
