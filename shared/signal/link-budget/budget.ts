import type { PortRef, VideoFormat } from '../../contract/chain.ts';
import type { Message } from '../../message/index.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import type { LinkElement } from './elements.ts';
import type { Loss } from './losses.ts';
import type { SeenEdid } from './seen-edid.ts';
import type { FormatVerdict, LinkVerdict } from './verdict.ts';

export type BudgetOptions = {
  /** A device to take out; the budget is then of the chain as if what feeds it went straight to what it feeds. */
  without?: string;
  /** What to assume in place of the defaults. */
  assumptions?: Partial<BudgetAssumptions>;
};

export type WantedOnLink = FormatVerdict & { wanted: VideoFormat; sentence: Message };

export type LinkBudget = {
  /** The link's id; of two links joined because the device between them is taken out, both with a plus sign. */
  id: string;
  linkIds: string[];
  /** The link whose cable is counted. */
  cableLinkId: string;
  from: PortRef;
  to: PortRef;
  name: Message;
  elements: LinkElement[];
  /** The EDID that the output at the link's source end sees. */
  seen: SeenEdid;
  /** Each format wanted over this link, in the order asked; the worst where several kinds of picture can be on it. */
  wanted: WantedOnLink[];
  /** Formats that this link surely carries and its EDID offers, best first. */
  fitting: VideoFormat[];
};

export type WantedOverall = {
  wanted: VideoFormat;
  verdict: LinkVerdict;
  /** The link that settles it: the worst, and of those the one with the least headroom; null without links. */
  linkId: string | null;
  /** It surely goes now, and wouldn't at 9 Gbit/s. */
  lostAtNineGbps: boolean;
  /** Where what was asked for with the picture gets lost on the way, an entry a device and reason. */
  losses: Loss[];
  sentence: Message;
};

export type DisplayBudget = {
  displayId: string;
  /** Links on any way to it. */
  linkIds: string[];
  /** The best format that all of them surely carry; null when there is none. */
  best: VideoFormat | null;
};

export type ChainBudget = {
  /** The device taken out; null when the chain is judged as it is. */
  without: string | null;
  links: LinkBudget[];
  wanted: WantedOverall[];
  displays: DisplayBudget[];
  /** Formats that all links surely carry, best first. */
  fitting: VideoFormat[];
  best: VideoFormat | null;
  /** With TMDS limited to 300 MHz and no fixed rate link, as when a device is limited to 9 Gbit/s. */
  atNineGbps: { best: VideoFormat | null; lost: VideoFormat[] };
  assumptions: BudgetAssumptions;
};
