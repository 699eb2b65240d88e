/** Every repetition is bounded, so that no line takes long. */
const announcement = String.raw`\b(?:firmware|fw|software|bootloader|fpga|mcu|dsp|scaler|version|versions|ver|build|rev|revision|release)\b`;
/** Up to three words between, none of those that lead to an address or another device. */
const between = String.raw`[^0-9A-Za-z]{0,4}(?:(?!(?:at|from|to|on|host|server|address|ip|port)\b)[A-Za-z][A-Za-z-]{0,19}[^0-9A-Za-z]{1,4}){0,3}`;
const suffix = '(?:[-+._]?[A-Za-z][0-9A-Za-z]{0,15})?(?![0-9A-Za-z])';
const dotted = new RegExp(
  String.raw`${announcement}${between}(?:v|r)?(\d{1,8}(?:[._-]\d{1,8}){1,5}${suffix})`,
  'i',
);
const plain = new RegExp(
  String.raw`\b(?:(?:version|ver|build|rev|revision|release)[^0-9A-Za-z]{0,4}v?|v)(\d{1,8}${suffix})`,
  'i',
);

/** The version that a line announces, such as `4.12.3` or, after `build` and the like, `1207`; null for none. */
export function versionIn(message: string): string | null {
  return dotted.exec(message)?.[1] ?? plain.exec(message)?.[1] ?? null;
}
