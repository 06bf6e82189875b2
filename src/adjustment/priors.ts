/**
 * What is known of a wheel end and of a hand-held picture before any mark: means and standard uncertainties, mm and rad.
 * All are common practice, no source, unless a line says otherwise; each is wide enough to hold the parts in use.
 * Depths are measured away from the camera, from the plane of motion through the rod's axis.
 */
export type Prior = readonly [mean: number, sigma: number];

/** Visible end of a 1/2 in clevis pin: half a clevis fork and the pin's head towards the camera. */
export const PIN_DEPTH: Prior = [-22, 7];
/** The rod's near side where it leaves the face, or its axis: 5/8 in rod. */
export const FACE_DEPTH: Prior = [-6, 5];
/** Visible end of the camshaft: half a hub and the stub outside it. */
export const CAMSHAFT_DEPTH: Prior = [-28, 12];
/** Inner end of the rod behind the face, brake released: depth of the non-pressure housing. */
export const ROD_INNER_END: Prior = [85, 25];
/** Pin beside the chamber axis, in any state: a rod swivels by a few degrees only. */
export const PIN_SIDE: Prior = [0, 10];
/** Pin from face: any chamber and clevis length. */
export const PIN_REACH: Prior = [150, 100];
/** Camshaft from face along the axis, and from the axis. */
export const CAMSHAFT_ALONG: Prior = [150, 120];
export const CAMSHAFT_ASIDE: Prior = [143, 40];
/** Arm length where nobody read it: 5 to 6 1/2 in are in use. */
export const ARM_LENGTH: Prior = [146, 14];
/** Clearance of pin and bushing, and what a bracket gives, between two states. */
export const ARC_PLAY_MM = 0.5;

/** Tape held along the rod by hand: two tilts, beside the rod, in front of it. */
export const TAPE_TILT_RAD = 0.087;
export const TAPE_SIDE: Prior = [0, 30];
export const TAPE_DEPTH: Prior = [-15, 10];
/** Zero bottomed on the chamber face within 1/16 in (rectangular), or anywhere. */
export const TAPE_ZERO_AT_FACE_MM = 1.6 / Math.sqrt(3);
export const TAPE_ZERO_FREE_MM = 150;
/** Print of the graduations, between any two of them up to a metre apart: accuracy class II, (0.3 + 0.2 L) mm, L in metres rounded up,
 * rectangular (Directive 2014/32/EU, annex X (MI-008), from memory). All of it is taken to lie between the first and the last that are
 * marked, though what is printed goes off with the length: that leaves room for worn tapes and such of no class. */
export const TAPE_PRINT_MM = 0.5 / Math.sqrt(3);
/** Steel, 30 K from where it is right, rectangular; and what a bow shortens. */
export const TAPE_STRAIN = 0.0003;
/** Blade held or laid along the rod: out of a straight line by so much over a foot; more shows to the eye. */
export const TAPE_BOW_MM = 2.5;
/** Of the row of marks across the blade: the blade's bow as an oblique view turns it, and where on its stroke a mark was set. */
export const TAPE_ROW_MM = 2.5;

/** Blade or card that lies on the end of the pin: rust, a bent edge, and that the pin travels a little askew to what stays put. */
export const CONTACT_MM = 1.5;

/** Printed target laid along the rod: its origin, two tilts, how flat paper lies on something flat (share of a length). */
export const TARGET_ALONG: Prior = [60, 150];
export const TARGET_ASIDE: Prior = [0, 100];
export const TARGET_DEPTH: Prior = [-15, 20];
export const TARGET_TILT_RAD = 0.065;
export const CARD_FLATNESS = 0.001;

/** A fixed thing that several pictures show, the chamber as well as the ground behind: a bound only, which must not pull the poses. */
export const TIE_ALONG: Prior = [80, 2000];
export const TIE_ASIDE: Prior = [0, 2000];
export const TIE_DEPTH: Prior = [0, 2000];

/** Of the spot that was followed from the thing that was meant: a bound, wide of what a finger misses. */
export const FOLLOWED_OFFSET: Prior = [0, 5];

/** Rim of the clamp band towards the rod, along the axis from the face. */
export const BAND_ALONG: Prior = [-55, 30];

/** A known distance laid near the rod: it may lie in any direction, roughly in the plane of motion. */
export const DISTANCE_ALONG: Prior = [120, 150];
export const DISTANCE_SIDE: Prior = [0, 150];
export const DISTANCE_DEPTH: Prior = [-10, 20];
export const DISTANCE_TILT_RAD = 0.14;

/** A person looks at the brake roughly from the side: direction of view off square, in each of two directions. */
export const OFF_SQUARE = 0.45;
/** Frames of a clip, filmed by one hand, are one witness of that, not many: the mean of their directions; asked is to film squarely, and the
 * studies reach to 25 degrees in each of two directions, 0.25 rad rms where all are alike likely. Of each frame from the first: a hand's width of sway, 80 mm at 0.8 m. */
export const FILMED_OFF_SQUARE = 0.25;
export const FILMED_APART_RAD = 0.1;
/** Pictures of one brake by one person: half of the others within 9 degrees of the first, 1 in 20 beyond 30, 1 in 100 beyond 54. */
export const NEAR_RAD = 0.12;
export const NEAR_FREEDOM = 3;
/** Found farther apart than this they are not near: 12 degrees; of 200 simulated pairs 5 degrees apart none was. */
export const NOT_NEAR_RAD = 0.2;

/** Lens: what a phone leaves of its distortion; axis off the picture's centre, as a share of the longer side. */
export const K1_SIGMA = 0.015;
/** Of a wider lens than a phone's main one, by its 35 mm equivalent: not every camera straightens its pictures. */
export const K1_SIGMA_WIDE = 0.05;
export const WIDE_BELOW_35_MM = 20;
export const K2_SIGMA = 0.01;
export const PRINCIPAL_POINT_SHARE = 0.01;

/** A marked point of the rim is on the half that faces the camera; a little beyond it may come into sight round the housing, farther
 * is less and less likely: free up to the first angle from the facing side, then held with the second as its width. */
export const BAND_FREE_RAD = 1.75;
export const BAND_BEYOND_RAD = 0.3;
/** Angle round the band, place along the rod or along a tape's edge are free: these only keep them finite where the marks leave them open. */
export const BAND_ANGLE_RAD = 20;
export const POSITION_ALONG_MM = 1000;
