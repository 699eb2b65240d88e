import type { Place } from '../../../shared/contract/chain.ts';

/** Whether what belongs to `inner` is shown at `outer`: a port's things are at its device too. */
export const belongsTo = (inner: Place, outer: Place): boolean =>
  (outer.kind === 'link' && inner.kind === 'link' && outer.linkId === inner.linkId) ||
  (outer.kind === 'device' && inner.kind === 'device' && outer.deviceId === inner.deviceId) ||
  (outer.kind === 'device' && inner.kind === 'port' && outer.deviceId === inner.deviceId);
