/** How much a search tries. */
export type Effort = {
  /** Starts of one pose that go on from the first look to a short run. */
  readonly lookedAt: number;
  /** Iterations of a short run. */
  readonly shortRun: number;
  /** Minima of one pose kept for joining: two by two mirrored tilts. */
  readonly keptOfPose: number;
  /** Combinations tried together. */
  readonly joined: number;
  /** Starts of all poses together that go on from the first look to a short run; 0: none are tried. */
  readonly paired: number;
  /** Where the focal length is hardly known, a longer one is tried too. */
  readonly longerFocal: boolean;
  /** A combination or a short run whose chi-square is larger than the best one's by more than this is not followed. */
  readonly reach: number;
  /** Runs taken to the end. */
  readonly finished: number;
};

export const QUICK: Effort = {
  lookedAt: 2,
  shortRun: 8,
  keptOfPose: 4,
  joined: 3,
  paired: 0,
  longerFocal: false,
  reach: 150,
  finished: 2,
};
/** Of a clip's core views, seen from places near by: a tape then has two tilts that fit alike, mirrored, and the quick search may find the
 * wrong one alone. The side views tell which is right, but only of those that were found. */
export const MIRRORED: Effort = { ...QUICK, lookedAt: 6, shortRun: 20, joined: 12, finished: 6 };
export const THOROUGH: Effort = {
  lookedAt: 15,
  shortRun: 40,
  keptOfPose: 6,
  joined: 36,
  paired: 16,
  longerFocal: true,
  reach: Number.POSITIVE_INFINITY,
  finished: 8,
};
