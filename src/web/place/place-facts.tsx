import { findDevice, findLink, findPort } from '../../../shared/chain/look-up.ts';
import type { Chain, Device, Link, Place } from '../../../shared/contract/chain.ts';
import { dynamicRangeNames } from '../../../shared/message/figures.ts';
import { Facts } from '../parts/card.tsx';
import { terms } from '../words/terms.ts';
import { number } from '../words/times.ts';
import { chainWords } from './chain-words.ts';
import { factWords } from './fact-words.ts';

/** What the chain's description says of a device or a cable. */
export function PlaceFacts({ chain, place }: { chain: Chain; place: Place }) {
  if (place.kind === 'link') {
    const link = findLink(chain, place.linkId);
    return link === undefined ? null : <LinkFacts chain={chain} link={link} />;
  }
  const device = place.kind === 'chain' ? undefined : findDevice(chain, place.deviceId);
  return device === undefined ? null : <DeviceFacts device={device} />;
}

function DeviceFacts({ device }: { device: Device }) {
  const t = factWords();
  return (
    <Facts
      facts={[
        [t.role, terms().role[device.role]],
        [t.model, device.model],
        [t.serial, device.serial ?? t.notKnown],
        [t.firmware, device.firmware ?? t.notKnown],
        [t.drawsMenu, device.drawsMenu ? t.yes : t.no],
        ...passed(device.passes),
        [t.notes, device.notes],
      ]}
    />
  );
}

/** What is recorded of what comes with a picture; nothing of what nobody looked up. */
function passed(passes: Device['passes']): [string, string | null][] {
  const t = factWords();
  const { dynamicRanges, features, deepestBits, wideColour, threeD, toneMaps } = passes ?? {};
  const yesNo = (is: boolean | undefined): string | null => (is === undefined ? null : is ? t.yes : t.no);
  const listed = (names: readonly string[] | undefined): string | null =>
    names === undefined ? null : names.length === 0 ? t.none : names.join(', ');
  return [
    [t.hdr, listed(dynamicRanges?.map((kind) => dynamicRangeNames[kind]))],
    [t.features, listed(features?.map((feature) => feature.toUpperCase()))],
    [t.deepestBits, deepestBits === undefined ? null : String(deepestBits)],
    ['BT.2020', yesNo(wideColour)],
    ['3D', yesNo(threeD)],
    [t.toneMaps, yesNo(toneMaps)],
  ];
}

function rated({ rated: by }: Link): string | null {
  if (by === undefined) return null;
  const reach = by.lengthM === null ? '' : `, ${number(by.lengthM, 1)} m`;
  return `${number(by.gbps, 2)} Gbit/s${reach}`;
}

function LinkFacts({ chain, link }: { chain: Chain; link: Link }) {
  const t = factWords();
  const words = chainWords();
  const socket = (ref: Link['from']) =>
    `${findDevice(chain, ref.deviceId)?.name ?? ref.deviceId} ${findPort(chain, ref)?.label ?? ref.portId}`;
  const end = ({ seated, needsPower, powered }: Link['sourceEnd']) =>
    [
      `${t.seated}: ${words.threeState[seated]}`,
      needsPower ? `${t.powered}: ${words.threeState[powered]}` : '',
    ]
      .filter((part) => part !== '')
      .join(', ');
  return (
    <Facts
      facts={[
        [t.from, socket(link.from)],
        [t.to, socket(link.to)],
        [t.length, `${number(link.lengthM, 1)} m`],
        [t.construction, terms().construction[link.construction]],
        [t.category, terms().category[link.category]],
        [t.certified, link.certified ? t.yes : t.no],
        [t.rated, rated(link)],
        [t.gauge, link.gaugeAwg === undefined ? null : `AWG ${link.gaugeAwg}`],
        [t.couplers, link.couplers === undefined ? null : String(link.couplers)],
        [t.direction, t.directions[link.direction]],
        [t.sourceEnd, end(link.sourceEnd)],
        [t.sinkEnd, end(link.sinkEnd)],
        [t.route, t.routes[link.route]],
        [t.installed, link.installedOn],
        [t.notes, link.notes],
      ]}
    />
  );
}
