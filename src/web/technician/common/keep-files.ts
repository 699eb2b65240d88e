import type { EvidenceTie, FileEvidenceAbout } from '../../../../shared/contract/evidence.ts';
import { putFile } from '../../store/outbox.ts';

export type OnTicket = { id: string; sequence: number };
export const noTie: EvidenceTie = {
  deviceId: null,
  portId: null,
  linkId: null,
  watchId: null,
  changeId: null,
  shows: null,
};

/**
 * Puts photos into the outbox, made small, in the order they were picked.
 * @param onKept is told after each one how many are safe on this device
 */
export async function keepPhotos(
  ticket: OnTicket,
  files: readonly File[],
  { tie, onKept }: { tie: Partial<EvidenceTie>; onKept: (count: number) => void },
): Promise<void> {
  const { nameFor, photoForSending } = await import('./photo.ts');
  for (const [at, file] of files.entries()) {
    const sent = await photoForSending(file);
    const about = { ...aboutOf('photo', tie), takenAt: takenAt(file) };
    await putFile(ticket, sent, about, nameFor(file, sent));
    onKept(at + 1);
  }
}

/** Puts a file into the outbox as it is. */
export async function keepFile(ticket: OnTicket, file: File, about: FileEvidenceAbout): Promise<void> {
  const copy = new Blob([await file.arrayBuffer()], { type: file.type });
  await putFile(ticket, copy, about, file.name);
}

export const aboutOf = (kind: FileEvidenceAbout['kind'], tie: Partial<EvidenceTie>): FileEvidenceAbout => ({
  kind,
  tie: { ...noTie, ...tie },
  description: '',
  span: null,
  clock: {},
  takenAt: null,
});

/** A camera's picture is as old as its file; a clock that is ahead is not believed. */
const takenAt = (file: File): string => new Date(Math.min(file.lastModified, Date.now())).toISOString();
