import { z } from 'zod';
import { encodings, settingKey, settingValue, signalMode } from './chain.ts';
import { threeStates } from './chain-names.ts';
import {
  conversions,
  hdrKinds,
  lookMoments,
  negotiatedProtections,
  signalFields,
  witnessAnswers,
} from './look-names.ts';
import { id, instant, placeId } from './primitives.ts';
import { withdrawal } from './watch.ts';

export { conversions, hdrKinds, lookMoments, negotiatedProtections, signalFields, witnessAnswers };
export type SignalField = (typeof signalFields)[number];
export type Conversion = (typeof conversions)[number];
export type LookMoment = (typeof lookMoments)[number];

/** What a device's page says of a signal; null where it does not say, or where that does not bear on the fault. */
export const signalSeen = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('noSignal') }),
  z.object({
    kind: z.literal('signal'),
    resolution: z
      .object({ widthPx: z.int().min(1).max(16_384), heightPx: z.int().min(1).max(16_384) })
      .nullable()
      .default(null),
    refreshHz: z.number().min(1).max(1000).nullable().default(null),
    bitsPerComponent: z
      .union([z.literal(8), z.literal(10), z.literal(12), z.literal(16)])
      .nullable()
      .default(null),
    encoding: z.enum(encodings).nullable().default(null),
    hdr: z.enum(hdrKinds).nullable().default(null),
    protection: z.enum(negotiatedProtections).nullable().default(null),
    /** Gigabits per second of the whole link. */
    linkGbps: z.number().positive().max(100).nullable().default(null),
  }),
]);
export type SignalSeen = z.infer<typeof signalSeen>;

const threeState = z.enum(threeStates);
const signalAt = {
  kind: z.literal('signal'),
  deviceId: placeId,
  moment: z.enum(lookMoments),
};
const signalSaid = {
  /** Null where the device does not say. */
  receives: signalSeen.nullable().default(null),
  sends: signalSeen.nullable().default(null),
  /** What it is set to do to the picture. */
  intended: z.array(z.enum(conversions)).max(conversions.length).default([]),
};

/** What a device's own menu can tell of a fault: tried once, by unplugging its input and looking. */
const menuLook = z.object({
  kind: z.literal('menu'),
  deviceId: placeId,
  survivesLossOfInput: threeState,
  keepsFormat: threeState,
});
/** What a socket is set to, as the device's menu says. */
const portModeLook = z.object({
  kind: z.literal('portMode'),
  deviceId: placeId,
  portId: placeId,
  found: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('set'), mode: signalMode }),
    z.object({ kind: z.literal('automatic') }),
    z.object({ kind: z.literal('nothingToSet') }),
  ]),
});
/** Another setting, in the words of the device's menu, and what it should be where that is known. */
const settingLook = z.object({
  kind: z.literal('setting'),
  deviceId: placeId,
  key: settingKey,
  value: settingValue,
  shouldBe: settingValue.nullable().default(null),
});
/** Whether a parallel display, or another source, shows the fault at the same moment as the one that is known to. */
const witnessLook = z.object({
  kind: z.literal('witness'),
  deviceId: placeId,
  /** The display, or source, that shows it. */
  besideId: placeId,
  answer: z.enum(witnessAnswers),
});

/** Something to look at on site without changing anything, as it is sent. */
export const lookSent = z.discriminatedUnion('kind', [
  z.object({
    ...signalAt,
    said: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('read'), ...signalSaid }),
      /** The same as the device said the time before. */
      z.object({ kind: z.literal('asBefore') }),
    ]),
  }),
  menuLook,
  portModeLook,
  settingLook,
  witnessLook,
]);
export type LookSent = z.infer<typeof lookSent>;

/** What a device says of its signal, as it is kept. */
export const signalLook = z.object({
  ...signalAt,
  ...signalSaid,
  /** The look that it says the same as. */
  sameAs: id.nullable(),
});

/** The same as it is kept. */
export const lookKept = z.discriminatedUnion('kind', [
  signalLook,
  menuLook,
  portModeLook,
  settingLook,
  witnessLook,
]);
export type LookKept = z.infer<typeof lookKept>;

/** One look, with who took it and what was in place meanwhile. */
export const look = z.object({
  id,
  round: z.int().min(1),
  what: lookKept,
  /** The change that was in place; null for the chain as found. */
  changeId: id.nullable(),
  /** The photo of it. */
  evidenceId: id.nullable(),
  at: instant,
  by: id,
  withdrawn: withdrawal.nullable(),
});
export type Look = z.infer<typeof look>;
export type LookOf<Kind extends LookKept['kind']> = Look & { what: Extract<LookKept, { kind: Kind }> };
