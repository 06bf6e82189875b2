/**
 * What can be wrong with a brake whose stroke is too long, and the questions that tell: the codes only.
 * Source  makers' manuals and trade texts, common practice.
 */
export const CAUSES = [
  'adjuster-worn',
  'adjuster-mounting',
  'adjuster-set-wrong',
  'clevis-worn',
  'push-rod-length',
  'push-rod-bent',
  'chamber-loose',
  'chamber-wrong',
  'arm-length-wrong',
  'camshaft-bushing-worn',
  'camshaft-bent-or-dry',
  'linings-worn',
  'drum-worn',
  'shoe-spring-broken',
  'other',
  'not-found',
] as const;
export type Cause = (typeof CAUSES)[number];

export const CAUSE_CHECKS = [
  'adjuster-turns',
  'adjuster-holds',
  'adjuster-mounting-tight',
  'clevis-free-of-play',
  'push-rod-straight',
  'chamber-mounting-tight',
  'chamber-as-other-side',
  'arm-as-other-side',
  'camshaft-free-of-play',
  'camshaft-turns-freely',
  'linings-thick-enough',
  'drum-within-size',
  'shoe-springs-whole',
] as const;
export type CauseCheck = (typeof CAUSE_CHECKS)[number];
