/** What an organisation may use so much of: uploads that are not whole yet, bytes of evidence, streams of events, requests. */
export const quotaNames = ['openUploads', 'storedBytes', 'eventStreams', 'requestsPerMin'] as const;
export type QuotaName = (typeof quotaNames)[number];
