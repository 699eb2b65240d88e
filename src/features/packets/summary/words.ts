import type { CaseFile } from '../../../../shared/contract/packet.ts';

/** `2026-11-25 09:12`, UTC. */
export const moment = (instant: string): string => `${instant.slice(0, 10)} ${instant.slice(11, 16)}`;
/** `2026-11-25 09:12:40`, UTC. */
export const exactMoment = (instant: string): string => `${instant.slice(0, 10)} ${instant.slice(11, 19)}`;

export const nameOf = (file: Pick<CaseFile, 'people'>, memberId: string): string =>
  file.people.find((person) => person.id === memberId)?.name ?? memberId;

/** What there is of some parts, in a row. */
export const joined = (parts: readonly string[], between: string): string =>
  parts.filter((part) => part !== '').join(between);
