// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

export const priorities = ['low', 'normal', 'high', 'urgent'] as const;
