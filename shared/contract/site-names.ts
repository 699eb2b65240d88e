// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

/** Where work can hurt someone. */
export const hazardKinds = ['ladder', 'laser', 'mains', 'cableAcrossFloor', 'cableInWall', 'other'] as const;
