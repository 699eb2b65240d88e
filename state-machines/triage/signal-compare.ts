import type { Device } from '../../shared/contract/chain.ts';
import type { Conversion, SignalField, SignalSeen } from '../../shared/contract/look.ts';
import type { Symptom } from '../../shared/contract/triage.ts';

/** The fields of a device's page that bear on a symptom; the rest need not be read. Common practice, no source. */
const fieldsBySymptom: Record<Symptom['kind'], readonly SignalField[]> = {
  noPicture: ['resolution', 'refreshHz', 'protection', 'linkGbps'],
  dropOuts: ['resolution', 'refreshHz', 'protection', 'linkGbps'],
  sparkles: ['bitsPerComponent', 'linkGbps'],
  noHdr: ['hdr', 'encoding', 'bitsPerComponent'],
  wrongColour: ['encoding', 'bitsPerComponent', 'hdr'],
  wrongRateOrResolution: ['resolution', 'refreshHz', 'linkGbps'],
  contentProtectionMessage: ['protection', 'resolution', 'refreshHz'],
  soundOnly: ['resolution', 'refreshHz', 'protection'],
};
export const fieldsFor = ({ kind }: Pick<Symptom, 'kind'>): readonly SignalField[] => fieldsBySymptom[kind];

/** What an intended conversion changes on the way through a device; that is no loss. */
const changedBy: Record<Conversion, readonly SignalField[]> = {
  toneMapping: ['hdr'],
  scaling: ['resolution'],
  rateConversion: ['refreshHz'],
  colourConversion: ['encoding', 'bitsPerComponent'],
  dynamicHdrInRgb: ['hdr', 'encoding', 'bitsPerComponent'],
};
export const changedOnPurpose = (intended: readonly Conversion[]): Set<SignalField> =>
  new Set(intended.flatMap((conversion) => changedBy[conversion]));

/** Each link negotiates its own rate: it is compared between the ends of one link, and between moments at one place. */
export const ownOfLink: readonly SignalField[] = ['linkGbps'];

type Signal = Extract<SignalSeen, { kind: 'signal' }>;
/** Pages round rates: 59.94 is shown as 60. Common practice, no source. */
const sameRate = (a: number, b: number): boolean => Math.abs(a - b) <= 0.002 * Math.max(a, b);

function isSame(field: SignalField, a: Signal, b: Signal): boolean | null {
  const [one, other] = [a[field], b[field]];
  if (one === null || other === null) return null;
  if (field === 'refreshHz') return sameRate(a.refreshHz ?? 0, b.refreshHz ?? 0);
  if (field === 'resolution')
    return (
      a.resolution?.widthPx === b.resolution?.widthPx && a.resolution?.heightPx === b.resolution?.heightPx
    );
  return one === other;
}

/** Whether a signal is what it should be, in the fields that both tell; null where none can be compared. */
export function compared(
  seen: SignalSeen,
  expected: SignalSeen,
  fields: readonly SignalField[],
): 'right' | 'wrong' | null {
  if (seen.kind === 'noSignal') return expected.kind === 'noSignal' ? null : 'wrong';
  if (expected.kind === 'noSignal') return null;
  const told = fields.flatMap((field) => isSame(field, seen, expected) ?? []);
  if (told.length === 0) return null;
  return told.every((same) => same) ? 'right' : 'wrong';
}

/** What a device sends for what it receives, by what it is set to: its own format, where it has one. */
export function setToSend(device: Device | undefined, received: SignalSeen): SignalSeen {
  const format = device?.outputFormat ?? null;
  if (format === null || received.kind === 'noSignal') return received;
  const { widthPx, heightPx, refreshHz, encoding, bitsPerComponent } = format;
  return { ...received, resolution: { widthPx, heightPx }, refreshHz, encoding, bitsPerComponent };
}

/** Whether a signal shows the fault by itself: there is none, or it is of standard range where HDR is missed. */
export const showsFault = (
  seen: SignalSeen,
  { kind }: Pick<Symptom, 'kind'>,
  excused: ReadonlySet<SignalField>,
): boolean => seen.kind === 'noSignal' || (kind === 'noHdr' && seen.hdr === 'none' && !excused.has('hdr'));

/** Whether a signal that is there shows by itself that the fault has not happened to it yet. */
export const showsNoFault = (seen: SignalSeen, { kind }: Pick<Symptom, 'kind'>): boolean =>
  seen.kind === 'signal' &&
  (kind === 'noPicture' ||
    kind === 'dropOuts' ||
    (kind === 'noHdr' && seen.hdr !== null && seen.hdr !== 'none'));
