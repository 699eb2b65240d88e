import { checkLevels } from '../../chain/firmware-level.ts';
import {
  bareName,
  deviceName,
  displaysOf,
  downstreamOf,
  findDevice,
  linkAtPort,
  linkEnds,
  linksInto,
  linksOutOf,
  parallelBranches,
  placeName,
  upstreamOf,
} from '../../chain/graph.ts';
import { listed, sentenceStart } from '../../chain/sentences.ts';
import { bitRateGbps, gbps } from '../../chain/signal-mode.ts';
import type { Device, Port } from '../../contract/chain.ts';
import { firmwareCaution, mainsCaution } from './cautions.ts';
import { commonPractice, type DeviceContext, type Observation, type Rule } from './rule.ts';

function receiverModes({ chain, device, name, assumptions }: DeviceContext): Observation[] {
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
      text: `A receiver often has to be told to pass ${gbps(assumptions.requiredGbps)}; what ${listed(untold.map(({ label }) => `'${label}'`))} of ${name} is set to isn't noted.`,
      whatToDo: 'Look at the signal format of each input and output in its menu, and note it.',
      cautions: [],
    },
  ];
}

function extenderBox({ chain, device, name }: DeviceContext): Observation[] {
  const links = [...linksInto(chain, device.id), ...linksOutOf(chain, device.id)];
  if (device.role !== 'extender' || links.some((link) => link.construction === 'twistedPairExtender'))
    return [];
  return [
    {
      severity: 'note',
      text: `${sentenceStart(name)} is one more device on the way; extenders over twisted pair are best avoided.`,
      whatToDo: 'Look what it runs over, and note it; plan an active optical cable in place of twisted pair.',
      cautions: [],
    },
  ];
}

/** A source that has its own output format plays; any other device that has one converts. */
const processes = (device: Device): boolean =>
  device.processesPicture || (device.role !== 'source' && device.outputFormat !== null);

function processing({ chain, device, name }: DeviceContext): Observation[] {
  if (device.role === 'processor' || !processes(device)) return [];
  const onItsWay = [...upstreamOf(chain, device.id), ...downstreamOf(chain, device.id)].flatMap(
    (id) => findDevice(chain, id) ?? [],
  );
  const processor = onItsWay.find(({ role }) => role === 'processor');
  const others = onItsWay.filter((other) => other.role !== 'display' && processes(other));
  if (processor === undefined && device.role === 'display') return [];
  const what = `${sentenceStart(name)} scales or processes the picture`;
  const [beside] = others;
  if (processor !== undefined)
    return [
      {
        severity: 'shouldFix',
        text: `${what}; with ${deviceName(chain, processor.id)} on the way only that one should.`,
        whatToDo: 'Note its settings, then switch off its scaling, conversion and processing.',
        cautions: [],
      },
    ];
  return [
    {
      severity: beside === undefined ? 'note' : 'shouldFix',
      text: beside === undefined ? `${what}.` : `${what}, and so does ${deviceName(chain, beside.id)}.`,
      whatToDo:
        beside === undefined
          ? 'Note its settings; switch scaling and processing off while looking for the fault.'
          : 'Note its settings, then leave scaling and processing to one device.',
      cautions: [],
    },
  ];
}

/** Displays and sources answer for nothing upstream of them, and a processor is there to do so. */
const passesEdidOn: readonly Device['role'][] = ['switch', 'receiver', 'extender', 'splitter'];

function edidManagement({ device, name }: DeviceContext): Observation[] {
  if (!passesEdidOn.includes(device.role) || device.edidHandling.kind === 'passesOn') return [];
  const how = device.edidHandling.kind === 'replaces' ? 'with an EDID of its own' : 'with a limited EDID';
  return [
    {
      severity: 'shouldFix',
      text: `${sentenceStart(name)} answers ${how} instead of passing on what the display says.`,
      whatToDo: 'Note its settings, then switch EDID management off; leave it to the processor, if anything.',
      cautions: [],
    },
  ];
}

function parallelDisplay(context: DeviceContext): Observation[] {
  const { chain, device, name, duringTriage, displayId } = context;
  if (!duringTriage) return [];
  if (displayId !== null && findDevice(chain, displayId) !== undefined)
    return parallelBranches(chain, displayId)
      .filter(({ forkDeviceId, displayIds }) => forkDeviceId === device.id && displayIds.length > 0)
      .map(({ linkId, displayIds }) => ({
        severity: 'shouldFix',
        text: `${sentenceStart(name)} also feeds ${listed(displayIds.map((id) => deviceName(chain, id)))}, beside ${deviceName(chain, displayId)}.`,
        whatToDo: `Unplug ${placeName(chain, { kind: 'link', linkId })} at ${bareName(chain, device.id)} while you look for the fault.`,
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
      text: `${sentenceStart(name)} feeds ${listed(fed.map((id) => deviceName(chain, id)))} in parallel.`,
      whatToDo: 'Leave only the display that shows the fault plugged in while you look for it.',
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

function firmwareLevel({ device, name, minimumFirmware }: DeviceContext): Observation[] {
  return checkLevels(device, minimumFirmware).flatMap(({ result, reason, minimum }): Observation[] => {
    if (result === 'ok') return [];
    if (result === 'below')
      return [
        {
          severity: 'mustFix',
          text: `Firmware ${device.firmware} of ${name} is below ${minimum}, the lowest your organisation accepts for model ${device.model}.`,
          whatToDo: `Save its settings and note the level as found, then update it to ${minimum} or later.`,
          cautions: [firmwareCaution],
        },
      ];
    return [
      {
        severity: 'note',
        text: `Whether the firmware of ${name} reaches ${minimum} can't be told: ${reason}.`,
        whatToDo: 'Read the firmware level in its menu and note it as shown.',
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
    urgentFor: ['wrongRateOrResolution', 'noHdrOrWrongColour'],
    check: processing,
  },
  {
    id: 'edid-management',
    source: commonPractice,
    urgentFor: ['wrongRateOrResolution', 'noHdrOrWrongColour'],
    check: edidManagement,
  },
  {
    id: 'parallel-display',
    source: commonPractice,
    urgentFor: ['contentProtectionMessage'],
    check: parallelDisplay,
  },
  { id: 'firmware-level', source: 'level set by the organisation', urgentFor: [], check: firmwareLevel },
];
