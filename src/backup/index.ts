export { type BackupReport, backUp } from './back-up.ts';
export { type RestoreReport, restore } from './restore.ts';
