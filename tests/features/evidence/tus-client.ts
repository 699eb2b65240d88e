import type { TestMember } from '../../support/test-app.ts';

/** The protocol (tus 1.0.0, core and its creation extension) in the few headers it takes. */
export const tus = { 'tus-resumable': '1.0.0' };
export const signed = (as: TestMember) => ({ ...tus, authorization: `Bearer ${as.accessToken}` });

/** `Upload-Metadata`: keys with their values in base64. */
export const metadataHeader = (metadata: Record<string, string>): string =>
  Object.entries(metadata)
    .map(([key, value]) => `${key} ${Buffer.from(value).toString('base64')}`)
    .join(',');
