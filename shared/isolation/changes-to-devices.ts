import {
  componentsBetween,
  displaysOf,
  downstreamOf,
  linksInto,
  linksOutOf,
  pathsBetween,
  upstreamOf,
} from '../chain/graph.ts';
import type { Chain, Device } from '../contract/chain.ts';
import { message } from '../message/message.ts';
import { changeTo, correction, mayStay, minutes, type Scene } from './change-facts.ts';
import { aboveLimit, eitherSide, inputSide, onlyRoles, otherSide, outputSide } from './change-places.ts';
import { assumed, practice } from './figures.ts';
import { shortCable } from './kit.ts';
import { deviceToDisplays, sourcesToProcessor, sparedBySource } from './stretches.ts';

/** A passive cable that passes every rate with certainty; common practice, no source. */
const shortPassiveM = 4;

const bandwidthRelief = assumed({
  bandwidth: 0.88,
  portMode: 0.8,
  linkPower: 0.2,
  contact: 0.12,
  coupling: 0.6,
  contentDependent: 0.3,
  edid: 0.1,
});

const isPossible = ({ chain, segment }: Scene, fromId: string, toId: string): boolean =>
  componentsBetween(chain, fromId, toId).some((place) =>
    place.kind === 'link'
      ? segment.linkIds.includes(place.linkId)
      : segment.deviceIds.includes(place.deviceId),
  );

/** Metres of cable on the shortest way from one device to another. */
function shortestM(chain: Chain, fromId: string, toId: string): number {
  const lengthM = new Map(chain.links.map((link) => [link.id, link.lengthM]));
  const lengths = pathsBetween(chain, fromId, toId).paths.map(({ linkIds }) =>
    linkIds.reduce((total, id) => total + (lengthM.get(id) ?? 0), 0),
  );
  return Math.min(...lengths);
}

const change = changeTo('device');

/** The kinds of change made to a device. Common practice of the trade, no source; figures say their own origin. */
export const changesToDevices = {
  otherSource: change({
    asksWitnessFirst: true,
    whyNot: (scene, device) => onlyRoles(device, 'source') ?? outputSide(scene, device),
    byClient: 'remoteControl',
    minutes: minutes(5, 2),
    effects: {
      between: practice({ any: 0.96 }),
      passedLess: practice({
        bandwidth: 0.9,
        portMode: 0.85,
        processing: 0.5,
        linkPower: 0.2,
        coupling: 0.6,
      }),
      passedNotKnown: assumed({
        bandwidth: 0.2,
        portMode: 0.2,
        processing: 0.1,
        linkPower: 0.05,
        coupling: 0.15,
      }),
    },
    takesOut: sparedBySource,
  }),
  sourceIntoProcessor: change({
    whyNot: (scene, device) => {
      const notHere = onlyRoles(device, 'source');
      if (notHere !== null) return notHere;
      const { chain } = scene;
      const reached = downstreamOf(chain, device.id);
      const processors = chain.devices.filter(({ id, role }) => role === 'processor' && reached.has(id));
      const hasDevices = ({ id }: Device) =>
        componentsBetween(chain, device.id, id).some(({ kind }) => kind === 'device');
      return (
        (processors.length === 0 ? message('noProcessorFollows') : null) ??
        (processors.some(hasDevices) ? null : message('straightIntoProcessor')) ??
        (processors.some((each) => hasDevices(each) && isPossible(scene, device.id, each.id))
          ? null
          : otherSide)
      );
    },
    needs: ['needSureCable'],
    kit: [{ kind: 'cable', category: 'premiumHighSpeed', lengthM: 5 }],
    cautions: ['cautionCableAcrossFloor', 'cautionMains'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(15, 10),
    effects: {
      between: practice({ any: 0.96 }),
      target: assumed({ fiveVolt: 0.3, contentProtection: 0.1 }),
    },
    takesOut: sourcesToProcessor,
  }),
  bypassDevice: change({
    whyNot: (scene, device) => {
      if (device.role === 'source' || device.role === 'display')
        return message('cannotBypass', { role: device.role });
      const between =
        linksInto(scene.chain, device.id).length > 0 && linksOutOf(scene.chain, device.id).length > 0;
      return between ? eitherSide(scene, device) : message('noSignalInAndOut');
    },
    needs: ['needCouplerOrLongerCable'],
    kit: [{ kind: 'coupler' }],
    cautions: ['cautionMains'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(15, 15),
    effects: { target: practice({ any: 0.96 }), ends: assumed({ any: 0.4 }) },
  }),
  disableProcessing: change({
    ...mayStay,
    whyNot: (scene, device) =>
      device.processesPicture || device.edidHandling.kind !== 'passesOn'
        ? eitherSide(scene, device)
        : message('nothingToSwitchOff'),
    byClient: 'phoneTakesSight',
    minutes: minutes(10, 10),
    effects: { target: practice({ processing: 0.93, edid: 0.75, firmware: 0.25, setting: 0.3 }) },
    settings: { usual: null },
  }),
  limitInputBandwidth: change({
    whyNot: (scene, device) =>
      onlyRoles(device, 'processor', 'receiver', 'switch', 'display') ??
      inputSide(scene, device) ??
      aboveLimit(scene, device, 'input'),
    byClient: 'phoneTakesSight',
    minutes: minutes(10, 10),
    effects: {
      target: assumed({ portMode: 0.8, processing: 0.2 }),
      upstream: bandwidthRelief,
      downstream: bandwidthRelief,
    },
    isPassedOn: true,
    settings: { usual: { about: /input.*bandwidth|bandwidth.*input/i, to: '9 Gbit/s' } },
  }),
  limitOutputBandwidth: change({
    whyNot: (scene, device) =>
      onlyRoles(device, 'source', 'receiver', 'processor') ??
      outputSide(scene, device) ??
      aboveLimit(scene, device, 'output'),
    byClient: 'phoneTakesSight',
    minutes: minutes(10, 10),
    effects: {
      target: assumed({ portMode: 0.6, processing: 0.2, contentDependent: 0.3 }),
      downstream: bandwidthRelief,
    },
    settings: { usual: { about: /output.*bandwidth|bandwidth.*output/i, to: '9 Gbit/s' } },
  }),
  reissueHotPlug: change({
    whyNot: (scene, device) =>
      onlyRoles(device, 'processor', 'receiver', 'switch') ?? inputSide(scene, device),
    showsCulprit: false,
    byClient: 'remoteControl',
    minutes: minutes(5, 0),
    effects: {
      anywhere: assumed({
        edid: 0.35,
        contentProtection: 0.4,
        fiveVolt: 0.3,
        firmware: 0.15,
        latched: 0.2,
        contact: 0.05,
      }),
    },
  }),
  moveProcessorToDisplay: change({
    whyNot: (scene, device) => {
      const notHere = onlyRoles(device, 'processor');
      if (notHere !== null) return notHere;
      const { chain } = scene;
      const displays = displaysOf(chain).filter(({ id }) => upstreamOf(chain, id).has(device.id));
      const far = displays.filter(({ id }) => shortestM(chain, device.id, id) > shortPassiveM);
      return (
        (displays.length === 0 ? message('noDisplayFollows') : null) ??
        (far.length === 0 ? message('joinedWithin', { length: shortPassiveM }) : null) ??
        (far.some(({ id }) => isPossible(scene, device.id, id)) ? null : otherSide)
      );
    },
    needs: ['needShortPassiveCable', 'needLongInputCable', 'needMainsNearDisplay'],
    kit: [shortCable],
    cautions: ['cautionDisplay', 'cautionLifting', 'cautionCableAcrossFloor', 'cautionMains'],
    people: 2,
    byClient: 'phoneTakesKit',
    minutes: minutes(45, 30),
    riskMin: 20,
    effects: { between: practice({ any: 0.95 }) },
    takesOut: deviceToDisplays,
  }),
  substituteDisplay: change({
    whyNot: (scene, device) => onlyRoles(device, 'display') ?? eitherSide(scene, device),
    needs: ['needLikeDisplay'],
    needsAt: ({ ports }) => {
      const versions = [...new Set(ports.map(({ contentProtection }) => contentProtection))];
      const known = versions.filter((version) => version !== 'unknown' && version !== 'none');
      return known.map((version) => message('needContentProtection', { version }));
    },
    kit: [{ kind: 'display' }],
    cautions: ['cautionDisplay', 'cautionLifting', 'cautionMains'],
    people: 2,
    byClient: 'phoneTakesKit',
    minutes: minutes(30, 20),
    riskMin: 10,
    effects: { target: practice({ any: 0.96 }), ends: assumed({ contact: 0.4 }) },
  }),
  restoreSettings: change({
    ...correction,
    whyNot: (scene, device) =>
      eitherSide(scene, device) ??
      (Object.keys(device.settings).length > 0 || scene.settingsKnownIds.includes(device.id)
        ? null
        : message('noEarlierSettings')),
    needs: ['needEarlierSettings'],
    byClient: 'phoneTakesSight',
    minutes: minutes(15, 15),
    effects: {
      target: practice({ setting: 0.93, portMode: 0.7, edid: 0.7, processing: 0.8 }),
      whole: assumed({ controlBus: 0.3 }),
    },
    settings: { usual: null },
  }),
  updateFirmware: change({
    ...correction,
    whyNot: eitherSide,
    canBeUndone: false,
    needs: ['needFirmwareFile', 'needTimeForUpdate'],
    cautions: ['cautionFirmwareUpdate', 'cautionMains'],
    byClient: 'phoneCantBeUndone',
    minutes: minutes(45, 0),
    riskMin: 60,
    effects: {
      target: assumed({ firmware: 0.85, latched: 0.6, edid: 0.25, processing: 0.2, contentProtection: 0.15 }),
    },
  }),
};
