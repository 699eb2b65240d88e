import { readFile } from '../../api/client.ts';

/** Fetches a file that only members may have, and has the browser keep it. @returns whether it could be had */
export async function saveFile(path: string, name: string): Promise<boolean> {
  const blob = await readFile(path);
  if (blob === null) return false;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return true;
}
