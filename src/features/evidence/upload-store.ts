import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { FileStore } from '@tus/file-store';
import { Upload } from '@tus/server';

/** How long an unfinished upload waits for its phone to come back; assumed. */
const keptForMs = 7 * 24 * 3600 * 1000;

/** What is noted beside an upload: the sender's own metadata, whose it is, and the evidence that came of it. */
export type UploadNotes = {
  readonly ticketId: string;
  readonly about: string;
  readonly filename: string;
  readonly organisation: string;
  readonly member: string;
  readonly evidence?: string;
};

/** Uploads under way, as files in a folder. A finished one leaves its notes behind for a phone that missed the reply. */
export class UploadStore extends FileStore {
  /** Organisations by the uploads that nothing was made of yet; read from the folder when it is asked for first. */
  readonly #open = new Map<string, string>();
  #known: Promise<void> | null = null;

  constructor(directory: string) {
    super({ directory, expirationPeriodInMilliseconds: keptForMs });
  }

  /** How many uploads of an organisation became nothing yet. */
  async openOf(organisation: string): Promise<number> {
    this.#known ??= this.#findOpen();
    await this.#known;
    return [...this.#open.values()].filter((whose) => whose === organisation).length;
  }

  async #findOpen(): Promise<void> {
    for (const name of await readdir(this.directory)) {
      if (!name.endsWith('.json')) continue;
      const id = name.slice(0, -'.json'.length);
      const notes = await this.notesOf(id);
      if (notes !== null && notes.evidence === undefined) this.#open.set(id, notes.organisation);
    }
  }

  override async create(upload: Upload): Promise<Upload> {
    const created = await super.create(upload);
    this.#open.set(upload.id, String(upload.metadata?.organisation));
    return created;
  }

  pathOf(id: string): string {
    return join(this.directory, id);
  }

  /** Null where there is no such upload. `id` is a UUID. */
  async notesOf(id: string): Promise<UploadNotes | null> {
    const record = await this.configstore.get(id);
    return record?.metadata === undefined ? null : (record.metadata as UploadNotes);
  }

  /** True once all bytes are here and nothing was made of them yet. */
  async isWhole(id: string): Promise<boolean> {
    const { size, offset, metadata } = await this.getUpload(id);
    return metadata?.evidence === undefined && size !== undefined && offset === size;
  }

  async noteFinished(id: string, evidenceId: string): Promise<void> {
    this.#open.delete(id);
    const record = await this.configstore.get(id);
    if (record === undefined) return;
    await this.configstore.set(
      id,
      Object.assign(record, { metadata: { ...record.metadata, evidence: evidenceId } }),
    );
  }

  /** A finished upload has moved on; its notes say that all of it arrived. */
  override async getUpload(id: string): Promise<Upload> {
    const record = await this.configstore.get(id);
    if (record?.metadata?.evidence === undefined || record.size === undefined) return super.getUpload(id);
    return new Upload({
      id,
      size: record.size,
      offset: record.size,
      metadata: record.metadata,
      ...(record.creation_date === undefined ? {} : { creation_date: record.creation_date }),
    });
  }

  override async remove(id: string): Promise<void> {
    this.#open.delete(id);
    await rm(this.pathOf(id), { force: true });
    await rm(`${this.pathOf(id)}.json`, { force: true });
  }

  /** Removes what nobody came back for, and the notes of what was finished that long ago. */
  async removeAbandoned(now: Date): Promise<void> {
    for (const name of await readdir(this.directory)) {
      if (!name.endsWith('.json')) continue;
      const id = name.slice(0, -'.json'.length);
      const record = await this.configstore.get(id);
      const begun = Date.parse(record?.creation_date ?? '');
      if (now.getTime() - begun > keptForMs) await this.remove(id);
    }
  }
}
