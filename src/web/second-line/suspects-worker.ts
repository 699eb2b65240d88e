import { type CaseInputs, suspectsOverTime } from './suspects-over-time.ts';

// The whole case ranked anew after every result takes a while, so it is done beside the screen and not in its way.
self.onmessage = ({ data }: MessageEvent<CaseInputs>) => {
  self.postMessage(suspectsOverTime(data));
};
