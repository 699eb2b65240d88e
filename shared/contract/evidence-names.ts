// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

export const evidenceKinds = ['photo', 'log', 'edid', 'settings', 'firmware', 'note', 'document'] as const;
/** Those that come as a file from elsewhere; a photo is taken. */
export const attachedKinds = ['log', 'edid', 'settings', 'document'] as const;

/** What a case has to show of a suspect cable: both its ends and its printed label. */
export const linkViews = ['sourceEnd', 'sinkEnd', 'label'] as const;
export type LinkView = (typeof linkViews)[number];
export const shownViews = [...linkViews, 'port', 'screen', 'signature', 'other'] as const;

/** When settings were read: before the change was applied, after it, or apart from any change. */
export const settingsPhases = ['before', 'after', 'apart'] as const;
