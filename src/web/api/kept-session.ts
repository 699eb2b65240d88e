import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Member, Tokens } from '../../../shared/contract/people.ts';

type KeptSession = { member: Member; organisation: Tokens['organisation']; refreshToken: string };
interface Schema extends DBSchema {
  session: { key: 'current'; value: KeptSession };
}

let opened: Promise<IDBPDatabase<Schema>> | null = null;
const open = (): Promise<IDBPDatabase<Schema>> => {
  opened ??= openDB<Schema>('halfsplit-session', 1, {
    upgrade: (database) => void database.createObjectStore('session'),
  });
  return opened;
};

/** The sign-in of this device, shared by all its tabs. */
export const keptSession = async (): Promise<KeptSession | null> =>
  (await (await open()).get('session', 'current')) ?? null;
export const keepSession = async (session: KeptSession): Promise<void> => {
  await (await open()).put('session', session, 'current');
};
export const forgetSession = async (): Promise<void> => {
  await (await open()).delete('session', 'current');
};
