/** The procedures whose pressure range a stroke can be taken by; the ranges stand in the rule set. */
export const PROCEDURES = ['roadside', 'periodic'] as const;
export type Procedure = (typeof PROCEDURES)[number];
