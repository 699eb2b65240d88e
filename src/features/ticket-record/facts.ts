/** Types of event that are on the log but not for the triage machine. */
export const factTypes = ['open', 'assign', 'takeOver', 'update', 'textErased', 'reportsErased'] as const;
export type FactType = (typeof factTypes)[number];
export const isFact = (type: string): type is FactType => (factTypes as readonly string[]).includes(type);
