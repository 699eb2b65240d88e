import { pointerTo } from '../../../shared/message/index.ts';
import {
  decodeEdid,
  type Edid,
  encodeEdid,
  withoutNeedlessBytes,
} from '../../../shared/signal/edid/index.ts';

/** Bytes in JSON, told by their only key from a text: `{ "hex": "00ff" }`. */
type HexBytes = { hex: string };

const isHexBytes = (value: object): value is HexBytes =>
  Object.keys(value).length === 1 && 'hex' in value && typeof value.hex === 'string';

/** A tree as JSON takes it: as it is, but bytes as `HexBytes`. */
export function treeAsJson(value: unknown): unknown {
  if (value instanceof Uint8Array) return { hex: Buffer.from(value).toString('hex') };
  if (Array.isArray(value)) return value.map(treeAsJson);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, treeAsJson(part)]));
}

function withBytes(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withBytes);
  if (typeof value !== 'object' || value === null) return value;
  if (isHexBytes(value)) return Uint8Array.from(Buffer.from(value.hex, 'hex'));
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, withBytes(part)]));
}

export type ReadTree = { ok: true; edid: Edid } | { ok: false; reason: string };

/**
 * A tree from its JSON. What an EDID can hold is what comes back when its bytes are read again: the first field that
 * comes back otherwise is named, as a JSON pointer (RFC 6901). So nothing is written that says something else.
 */
export function treeFromJson(text: string): ReadTree {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (error) {
    return { ok: false, reason: `this is no JSON: ${(error as Error).message}` };
  }
  const edid = withBytes(given) as Edid;
  const again = decodedAgain(edid);
  if (again === null) return { ok: false, reason: 'this is not what decode --tree prints' };
  const at = firstDifference(given, treeAsJson(withoutNeedlessBytes(again)));
  if (at === null) return { ok: true, edid };
  return { ok: false, reason: `no EDID holds what stands at ${pointerTo(at) || 'the root'}` };
}

/** A form that is wrong in kind makes the encoder stumble somewhere, which says no more than that. */
function decodedAgain(edid: Edid): Edid | null {
  try {
    return decodeEdid(encodeEdid(edid)).edid;
  } catch {
    return null;
  }
}

/** The path to the first value that differs, or null; keys in any order. */
function firstDifference(a: unknown, b: unknown): string[] | null {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b ? null : [];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  for (const key of keys) {
    const inside = firstDifference((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]);
    if (inside !== null) return [key, ...inside];
  }
  return null;
}
