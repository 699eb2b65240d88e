import type { Place } from '../../shared/contract/chain.ts';
import type { Look, LookSent, SignalSeen } from '../../shared/contract/look.ts';
import { type Message, message } from '../../shared/message/message.ts';
import type { NamedPlace } from '../../shared/message/values.ts';
import type { EventOf } from './events.ts';

type Where = (place: Place) => NamedPlace;
const witnessCodes = {
  shows: 'log/witnessShows',
  doesNotShow: 'log/witnessDoesNotShow',
  cannotSay: 'log/witnessCannotSay',
} as const;

/** What an event says that something was looked at. */
export function describeLook({ what }: Pick<EventOf<'recordLook'>, 'what'>, where: Where): Message {
  const device = where({ kind: 'device', deviceId: what.deviceId });
  switch (what.kind) {
    case 'signal':
      return signalRead(what, device);
    case 'menu':
      return message('log/menuTried', {
        device,
        survives: what.survivesLossOfInput,
        keepsFormat: what.keepsFormat,
      });
    case 'portMode':
      return message('log/portModeSeen', {
        port: where({ kind: 'port', deviceId: what.deviceId, portId: what.portId }),
        found: portMode(what),
      });
    case 'setting':
      return message('log/settingSeen', {
        device,
        setting: what.key,
        value: what.value,
        shouldBe: what.shouldBe,
      });
    case 'witness':
      return message(witnessCodes[what.answer], { witness: device });
  }
}

function signalRead(what: Extract<LookSent, { kind: 'signal' }>, device: NamedPlace): Message {
  const isBad = what.moment === 'bad';
  if (what.said.kind === 'asBefore') return message('log/signalAsBefore', { device, isBad });
  const { receives, sends, intended } = what.said;
  return message('log/signalRead', {
    device,
    isBad,
    receives: describeSignal(receives),
    sends: describeSignal(sends),
    intended: intended.map((conversion) => message('intendedIs', { conversion })),
  });
}

function portMode({ found }: Extract<LookSent, { kind: 'portMode' }>): Message {
  if (found.kind === 'set') return message('portIsSetTo', { mode: found.mode });
  return message(found.kind === 'automatic' ? 'portIsAutomatic' : 'portHasNothingToSet');
}

/** What was looked at, as it is kept. */
export function describeKept({ what }: Pick<Look, 'what'>, where: Where): Message {
  if (what.kind !== 'signal') return describeLook({ what }, where);
  const { deviceId, moment, receives, sends, intended } = what;
  const said = { kind: 'read', receives, sends, intended } as const;
  return describeLook({ what: { kind: 'signal', deviceId, moment, said } }, where);
}

/** A signal as a device's page tells it: what it says, in one line. */
export function describeSignal(seen: SignalSeen | null): Message {
  if (seen === null) return message('signalNotTold');
  if (seen.kind === 'noSignal') return message('signalAbsent');
  const { resolution, refreshHz, bitsPerComponent, encoding, hdr, protection, linkGbps } = seen;
  const parts = [
    resolution && message('seenResolution', resolution),
    refreshHz && message('seenRate', { refreshHz }),
    bitsPerComponent && message('seenDepth', { bits: bitsPerComponent }),
    encoding && message('seenEncoding', { encoding }),
    hdr && message('seenHdr', { hdr }),
    protection && message('seenProtection', { version: protection }),
    linkGbps && message('seenLinkRate', { rate: linkGbps }),
  ].flatMap((part) => part || []);
  return parts.length === 0 ? message('signalNotTold') : message('signalOf', { parts });
}
