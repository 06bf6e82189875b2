/**
 * What to check when a stroke is not right, and what a bad answer points to: the table of the cause search.
 *
 * Rule     every check asks for the good state, so that 'no' is the bad answer. `after` is the evidence that sends one there first.
 *          The order of the list is the order where no evidence says more: what is seen with the brake together comes before what
 *          needs it apart.
 * Source   makers' adjuster manuals and trade texts (excerpts): free stroke in range and applied stroke long points to the foundation
 *          brake, free stroke long to the adjuster or its mounting. The order is ours.
 */
import type { Cause, CauseCheck } from './causes.ts';

const EVIDENCE = [
  'stroke-over',
  'free-stroke-long',
  'free-stroke-short',
  'free-stroke-in-range',
  'adjuster-takes-up',
  'adjuster-does-not-take-up',
  'adjuster-play-over',
  'camshaft-play-over',
  'lining-under',
  'drum-over',
  'chamber-mismatch',
  'arm-mismatch',
  'arm-past-square',
  'adjusted-by-hand',
] as const;
export type Evidence = (typeof EVIDENCE)[number];

export type CheckRule = {
  readonly check: CauseCheck;
  readonly after: readonly Evidence[];
  /** Most likely first. */
  readonly pointsTo: readonly Cause[];
};

export const CHECK_RULES: readonly CheckRule[] = [
  {
    check: 'adjuster-turns',
    after: ['free-stroke-long', 'adjusted-by-hand', 'adjuster-does-not-take-up'],
    pointsTo: ['adjuster-worn'],
  },
  {
    check: 'adjuster-mounting-tight',
    after: ['adjuster-does-not-take-up', 'free-stroke-long'],
    pointsTo: ['adjuster-mounting'],
  },
  {
    check: 'adjuster-holds',
    after: ['adjuster-does-not-take-up', 'adjusted-by-hand', 'free-stroke-long'],
    pointsTo: ['adjuster-worn'],
  },
  {
    check: 'clevis-free-of-play',
    after: ['free-stroke-long', 'free-stroke-in-range', 'adjuster-takes-up'],
    pointsTo: ['clevis-worn'],
  },
  {
    check: 'chamber-mounting-tight',
    after: ['free-stroke-in-range', 'adjuster-takes-up', 'arm-past-square'],
    pointsTo: ['chamber-loose'],
  },
  { check: 'chamber-as-other-side', after: ['chamber-mismatch'], pointsTo: ['chamber-wrong'] },
  { check: 'arm-as-other-side', after: ['arm-mismatch', 'arm-past-square'], pointsTo: ['arm-length-wrong'] },
  {
    check: 'push-rod-straight',
    after: ['arm-past-square', 'free-stroke-short'],
    pointsTo: ['push-rod-bent', 'push-rod-length'],
  },
  {
    check: 'camshaft-free-of-play',
    after: ['camshaft-play-over', 'adjuster-takes-up', 'free-stroke-in-range'],
    pointsTo: ['camshaft-bushing-worn'],
  },
  {
    check: 'camshaft-turns-freely',
    after: ['free-stroke-short', 'adjuster-does-not-take-up', 'free-stroke-in-range'],
    pointsTo: ['camshaft-bent-or-dry'],
  },
  {
    check: 'linings-thick-enough',
    after: ['lining-under', 'free-stroke-in-range', 'adjuster-takes-up'],
    pointsTo: ['linings-worn'],
  },
  {
    check: 'drum-within-size',
    after: ['drum-over', 'free-stroke-in-range', 'adjuster-takes-up'],
    pointsTo: ['drum-worn'],
  },
  {
    check: 'shoe-springs-whole',
    after: ['free-stroke-short', 'free-stroke-in-range'],
    pointsTo: ['shoe-spring-broken'],
  },
];

/** Causes that evidence points to without another check. */
export const CAUSES_BY_EVIDENCE: Readonly<Partial<Record<Evidence, readonly Cause[]>>> = {
  'adjuster-does-not-take-up': ['adjuster-worn', 'adjuster-mounting'],
  'free-stroke-short': ['adjuster-set-wrong'],
  'camshaft-play-over': ['camshaft-bushing-worn'],
  'lining-under': ['linings-worn'],
  'drum-over': ['drum-worn'],
  'chamber-mismatch': ['chamber-wrong'],
  'arm-mismatch': ['arm-length-wrong'],
};
