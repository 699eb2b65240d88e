import { checkLevels } from '../../chain/firmware-level.ts';
import {
  displaysOf,
  downstreamOf,
  findDevice,
  linkAtPort,
  linkEnds,
  linksInto,
  linksOutOf,
  parallelBranches,
  upstreamOf,
} from '../../chain/graph.ts';
import { namedDevice, namedPlace, namedPort } from '../../chain/named-place.ts';
import { bitRateGbps } from '../../chain/signal-mode.ts';
import type { Chain, Device, Port } from '../../contract/chain.ts';
import { type Code, message, type NamedPlace } from '../../message/index.ts';
import { firmwareCaution, mainsCaution } from './cautions.ts';
import { edidManagement, lossRule } from './losses.ts';
import { commonPractice, type DeviceContext, type Observation, type Rule } from './rule.ts';

const deviceAt = (chain: Chain, deviceId: string): NamedPlace =>
  namedPlace(chain, { kind: 'device', deviceId });

function receiverModes({ chain, device, named, assumptions }: DeviceContext): Observation[] {
  if (device.role !== 'receiver') return [];
  const passes = (port: Port | undefined): boolean =>
    port !== undefined && bitRateGbps(port.highestMode) >= assumptions.requiredGbps;
  const untold = device.ports.filter((port) => {
    const link = linkAtPort(chain, { deviceId: device.id, portId: port.id });
    const ends = link === undefined ? null : linkEnds(chain, link);
    return port.setMode === null && passes(ends?.output) && passes(ends?.input);
  });
  if (untold.length === 0) return [];
  return [
    {
      severity: 'note',
      text: message('receiverModesUnknown', {
        receiver: named,
        ports: untold.map(({ id }) => namedPort(chain, { deviceId: device.id, portId: id })),
        required: assumptions.requiredGbps,
      }),
      whatToDo: message('lookUpSignalFormats'),
      cautions: [],
    },
  ];
}

function extenderBox({ chain, device, named }: DeviceContext): Observation[] {
  const links = [...linksInto(chain, device.id), ...linksOutOf(chain, device.id)];
  if (device.role !== 'extender' || links.some((link) => link.construction === 'twistedPairExtender'))
    return [];
  return [
    {
      severity: 'note',
      text: message('extenderOnTheWay', { extender: named }),
      whatToDo: message('lookWhatExtenderRunsOver'),
      cautions: [],
    },
  ];
}

/** A source that has its own output format plays; any other device that has one converts. */
const processes = (device: Device): boolean =>
  device.processesPicture || (device.role !== 'source' && device.outputFormat !== null);

function processing({ chain, device, named }: DeviceContext): Observation[] {
  if (device.role === 'processor' || !processes(device)) return [];
  const onItsWay = [...upstreamOf(chain, device.id), ...downstreamOf(chain, device.id)].flatMap(
    (id) => findDevice(chain, id) ?? [],
  );
  const processor = onItsWay.find(({ role }) => role === 'processor');
  const others = onItsWay.filter((other) => other.role !== 'display' && processes(other));
  if (processor === undefined && device.role === 'display') return [];
  const [beside] = others;
  if (processor !== undefined)
    return [
      {
        severity: 'shouldFix',
        text: message('processesBesideProcessor', {
          device: named,
          processor: deviceAt(chain, processor.id),
        }),
        whatToDo: message('switchProcessingOff'),
        cautions: [],
      },
    ];
  return [
    {
      severity: beside === undefined ? 'note' : 'shouldFix',
      text:
        beside === undefined
          ? message('processesPicture', { device: named })
          : message('processesBesideAnother', { device: named, other: deviceAt(chain, beside.id) }),
      whatToDo:
        beside === undefined ? message('switchProcessingOffForTheSearch') : message('leaveProcessingToOne'),
      cautions: [],
    },
  ];
}

function parallelDisplay(context: DeviceContext): Observation[] {
  const { chain, device, named, duringTriage, displayId } = context;
  if (!duringTriage) return [];
  if (displayId !== null && findDevice(chain, displayId) !== undefined)
    return parallelBranches(chain, displayId)
      .filter(({ forkDeviceId, displayIds }) => forkDeviceId === device.id && displayIds.length > 0)
      .map(({ linkId, displayIds }) => ({
        severity: 'shouldFix',
        text: message('feedsOtherDisplays', {
          device: named,
          others: displayIds.map((id) => deviceAt(chain, id)),
          display: deviceAt(chain, displayId),
        }),
        whatToDo: message('unplugForTheSearch', {
          cable: namedPlace(chain, { kind: 'link', linkId }),
          at: namedDevice(chain, device.id),
        }),
        cautions: [mainsCaution],
        place: { kind: 'link', linkId },
      }));
  const fedBy = linksOutOf(chain, device.id).map((link) => displaysAt(context, link.to.deviceId));
  const fed = [...new Set(fedBy.flat())];
  const splits = fedBy.some((displays) => displays.length > 0 && displays.length < fed.length);
  if (!splits) return [];
  return [
    {
      severity: 'shouldFix',
      text: message('feedsInParallel', { device: named, displays: fed.map((id) => deviceAt(chain, id)) }),
      whatToDo: message('leaveOneDisplay'),
      cautions: [mainsCaution],
    },
  ];
}

function displaysAt({ chain }: DeviceContext, deviceId: string): string[] {
  const reached = downstreamOf(chain, deviceId).add(deviceId);
  return displaysOf(chain)
    .map(({ id }) => id)
    .filter((id) => reached.has(id));
}

/** Why a level can't be compared that reading it once more may mend; the rest only its maker knows. */
const readAgain: ReadonlySet<string> = new Set<Code>([
  'firmwareNotRead',
  'firmwareWithoutBuild',
  'firmwareUnreadable',
]);

function firmwareLevel({ device, named, minimumFirmware }: DeviceContext): Observation[] {
  const { model, firmware } = device;
  return checkLevels(device, minimumFirmware).flatMap(({ result, reason, minimum }): Observation[] => {
    if (result === 'ok') return [];
    // Only a level that was read, of a model that is known, is found to be below another.
    if (result === 'below' && firmware !== null && model !== null)
      return [
        {
          severity: 'mustFix',
          text: message('firmwareBelowLevel', { device: named, firmware, minimum, model }),
          whatToDo: message('updateFirmwareTo', { minimum }),
          cautions: [firmwareCaution],
        },
      ];
    return [
      {
        severity: 'note',
        text: message('firmwareLevelUnknown', { device: named, minimum, reason }),
        whatToDo: message(readAgain.has(reason.code) ? 'readFirmware' : 'askBeforeUpdating'),
        cautions: [],
      },
    ];
  });
}

/** Prerequisites of each device. */
export const deviceRules: readonly Rule<DeviceContext>[] = [
  { id: 'port-mode', source: commonPractice, urgentFor: [], check: receiverModes },
  { id: 'twisted-pair-extender', source: commonPractice, urgentFor: [], check: extenderBox },
  {
    id: 'processing',
    source: commonPractice,
    urgentFor: ['wrongRateOrResolution', 'noHdr', 'wrongColour'],
    check: processing,
  },
  {
    id: 'edid-management',
    source: commonPractice,
    urgentFor: ['wrongRateOrResolution', 'noHdr', 'wrongColour'],
    check: edidManagement,
  },
  lossRule,
  {
    id: 'parallel-display',
    source: commonPractice,
    urgentFor: ['contentProtectionMessage'],
    check: parallelDisplay,
  },
  { id: 'firmware-level', source: message('levelOfOrganisation'), urgentFor: [], check: firmwareLevel },
];
