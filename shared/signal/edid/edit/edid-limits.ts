import { frlBitRateGbps, frlRates } from '../../format/index.ts';
import { highestPlainRateMHz, sinkCapabilities } from '../capabilities.ts';
import type { Edid } from '../tree.ts';

/** What to take away from an EDID; what is left out stays. */
export type EdidLimits = {
  /** Highest TMDS character rate to admit, MHz: 300 is 9 Gbit/s. Below 600 no fixed rate link goes with it, see `maxFrlGbps`. */
  maxTmdsCharacterRateMHz?: number;
  /** No fixed rate link, and with it no compression. */
  dropFrl?: boolean;
  /** Highest fixed rate to admit, Gbit/s of all lanes; below 9, the slowest there is, it means `dropFrl`. */
  maxFrlGbps?: number;
  /** No compression, whatever the fixed rate. */
  dropCompression?: boolean;
  drop420?: boolean;
  /** No HDR: static, dynamic and vendors' metadata blocks. Wide colorimetry stays, it isn't HDR's alone. */
  dropHdr?: boolean;
  /** No variable refresh rate. */
  dropVrr?: boolean;
  /** Audio: L-PCM of two channels and nothing else. */
  stereoOnly?: boolean;
};

/** Limits with everything decided. */
export type ResolvedLimits = {
  /** Null where the rate isn't to be limited. */
  rateMHz: number | null;
  /** Highest pixel clock of a format; infinite where any may stay: the rate isn't limited, or FRL carries the rest. */
  formatClockMHz: number;
  dropFrl: boolean;
  /** Highest Max_FRL_Rate code that may stay (HDMI 2.1 table 10-5). */
  mostFrlCode: number;
  dropCompression: boolean;
  drop420: boolean;
  dropHdr: boolean;
  dropVrr: boolean;
  stereoOnly: boolean;
};

/**
 * Works out which formats may stay. While a fixed rate link is left it carries what TMDS can't; once it is dropped,
 * formats must fit the TMDS rate, the one asked for or the sink's own.
 */
export function resolveLimits(edid: Edid, limits: EdidLimits): ResolvedLimits {
  const sink = sinkCapabilities(edid);
  const rateMHz = limits.maxTmdsCharacterRateMHz ?? null;
  const mostFrlCode = limits.dropFrl ? 0 : highestFrlCode(limits);
  const dropFrl = mostFrlCode === 0;
  const ownRateMHz = sink.tmdsRateStated ? sink.maxTmdsCharacterRateMHz : highestPlainRateMHz;
  const frlLeft = sink.frl !== null && !dropFrl;
  const frlLost = sink.frl !== null && dropFrl;
  const limited = !frlLeft && (rateMHz !== null || frlLost);
  return {
    rateMHz,
    formatClockMHz: limited
      ? Math.min(rateMHz ?? Number.POSITIVE_INFINITY, frlLost ? ownRateMHz : Number.POSITIVE_INFINITY)
      : Number.POSITIVE_INFINITY,
    dropFrl,
    mostFrlCode,
    dropCompression: limits.dropCompression ?? false,
    drop420: limits.drop420 ?? false,
    dropHdr: limits.dropHdr ?? false,
    dropVrr: limits.dropVrr ?? false,
    stereoOnly: limits.stereoOnly ?? false,
  };
}

/**
 * Codes past the table stand for rates that a limit of ours can't name: they stay where nothing is limited. Below 600 MHz
 * of TMDS there is no fixed rate but the slowest, and that one where the block can state its 300 MHz and more, which is
 * above 340 (HDMI 2.1 sections 7.4 and 10.3.2, as edid-decode checks them). Without being asked for, it isn't offered:
 * what is limited to so little knows none.
 */
function highestFrlCode({ maxFrlGbps, maxTmdsCharacterRateMHz = leastTmdsMHz }: EdidLimits): number {
  const asked =
    maxFrlGbps === undefined
      ? Number.POSITIVE_INFINITY
      : frlRates.filter((rate) => frlBitRateGbps(rate) <= maxFrlGbps).length;
  if (maxTmdsCharacterRateMHz >= leastTmdsMHz) return asked;
  return maxFrlGbps !== undefined && maxTmdsCharacterRateMHz > highestPlainRateMHz ? Math.min(asked, 1) : 0;
}

/** TMDS rate that a sink with fixed rates has, the slowest left out. */
const leastTmdsMHz = 600;
