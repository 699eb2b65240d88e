import { downstreamOf, findDevice, linksOutOf } from '../chain/graph.ts';
import type { Link } from '../contract/chain.ts';
import { type Message, message } from '../message/message.ts';
import { changeTo, correction, mayStay, minutes } from './change-facts.ts';
import { linkPossible, outputSide } from './change-places.ts';
import { assumed, practice } from './figures.ts';
import { cableFor, shortCable } from './kit.ts';
import { branchAt } from './stretches.ts';

/** Free cables up to this length are replaced as easily as bridged; assumed. */
const easilyReplacedM = 5;

const otherCable = {
  target: practice({ contact: 0.97, bandwidth: 0.93, coupling: 0.9, direction: 0.97, linkPower: 0.93 }),
  ends: assumed({ fiveVolt: 0.3, contentProtection: 0.05, edid: 0.05, portMode: 0.02 }),
};
const asLong = ({ lengthM }: Link): Message[] => [message('needCableAsLong', { lengthM })];

const change = changeTo('link');

/** The kinds of change made to a cable. Common practice of the trade, no source; figures say their own origin. */
export const changesToLinks = {
  reseat: change({
    ...correction,
    whyNot: linkPossible,
    canBeRepeated: true,
    cautions: ['cautionMains'],
    byClient: 'phonePullsPlugs',
    mends: ['seating'],
    minutes: minutes(5, 0),
    effects: {
      target: practice({ contact: 0.6, coupling: 0.3 }),
      ends: assumed({ contact: 0.6, contentProtection: 0.08, edid: 0.08 }),
    },
  }),
  flexCable: change({
    ...correction,
    whyNot: (scene, link) => {
      if (link.construction === 'activeOptical') return message('opticalNotFlexed');
      return linkPossible(scene, link) ?? (link.route === 'free' ? null : message('cableNotInReach'));
    },
    canBeRepeated: true,
    cautions: ['cautionFlexByHand', 'cautionMains'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(5, 0),
    effects: { target: assumed({ contact: 0.5, coupling: 0.2 }), ends: assumed({ contact: 0.3 }) },
    provokes: { target: practice({ contact: 0.6, coupling: 0.4 }), ends: assumed({ contact: 0.3 }) },
    provokingMin: 5,
    countsAs: 'reseat',
  }),
  replaceCable: change({
    ...mayStay,
    whyNot: (scene, link) =>
      linkPossible(scene, link) ?? (link.route === 'inWall' ? message('cableInWall') : null),
    canBeRepeated: true,
    needs: ['needSureCable'],
    needsAt: asLong,
    kit: (link) => [cableFor(link)],
    cautions: ['cautionMains'],
    cautionsAt: ({ route }) => (route === 'inConduit' ? ['cautionConduit'] : []),
    byClient: 'phoneTakesKit',
    mends: ['certification', 'length-long'],
    minutes: minutes(15, 10),
    isPulled: true,
    effects: otherCable,
  }),
  temporaryCable: change({
    whyNot: (scene, link) =>
      linkPossible(scene, link) ??
      (link.route === 'free' && link.lengthM <= easilyReplacedM ? message('cableShortAndFree') : null),
    needs: ['needSureCable', 'needTapeOrCover'],
    needsAt: asLong,
    kit: (link) => [cableFor({ ...link, construction: 'passiveCopper' })],
    cautions: ['cautionCableAcrossFloor', 'cautionMains'],
    byClient: 'phoneTakesKit',
    minutes: minutes(20, 10),
    effects: otherCable,
  }),
  removeCoupler: change({
    ...mayStay,
    whyNot: linkPossible,
    needs: ['needCableInOnePiece'],
    kit: (link) => [
      cableFor(
        link.construction === 'twistedPairExtender' ? { ...link, construction: 'passiveCopper' } : link,
      ),
    ],
    cautions: ['cautionMains'],
    cautionsAt: ({ route }) => (route === 'free' ? [] : ['cautionCableAcrossFloor']),
    byClient: 'phoneTakesKit',
    minutes: minutes(10, 10),
    effects: {
      target: practice({ coupling: 0.93, contact: 0.4, bandwidth: 0.25 }),
      ends: assumed({ contact: 0.2 }),
    },
  }),
  unplugBranch: change({
    asksWitnessFirst: true,
    whyNot: (scene, link) => {
      const { chain } = scene;
      const fork = findDevice(chain, link.from.deviceId);
      const others = linksOutOf(chain, link.from.deviceId).filter((each) => each.id !== link.id);
      if (fork === undefined || others.length === 0) return message('noParallelBranch');
      const beyond = downstreamOf(chain, link.to.deviceId).add(link.to.deviceId);
      if (scene.sideIds.some((id) => beyond.has(id))) return message('watchedPictureRunsThrough');
      return outputSide(scene, fork);
    },
    cautions: ['cautionMains'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(5, 5),
    effects: {
      between: practice({ any: 0.95 }),
      upstream: assumed({ edid: 0.35, contentProtection: 0.25 }),
    },
    takesOut: branchAt,
  }),
  insertSyncSwitch: change({
    ...mayStay,
    whyNot: linkPossible,
    needs: ['needSyncSwitch', 'needShortCable', 'needItsPowerSupply'],
    kit: [{ kind: 'syncSwitch' }, shortCable],
    cautions: ['cautionMains'],
    byClient: 'phoneTakesKit',
    minutes: minutes(15, 10),
    effects: {
      target: assumed({ bandwidth: 0.35, contact: 0.4, linkPower: 0.4 }),
      ends: practice({ edid: 0.5, contentProtection: 0.35, firmware: 0.25 }),
      upstream: practice({ fiveVolt: 0.6 }),
    },
  }),
};
