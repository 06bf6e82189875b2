/** What is asked about a picture near marks of a hand, and what was found there, as it passes between page and worker. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

const placePx = z.tuple([z.number(), z.number()]).readonly();
const sigmaPx = z.number().positive();
const num = z.number();

/** A graduation as a hand marked and named it. */
const namedSchema = z.strictObject({ placePx, sigmaPx, readingMm: z.number() }).readonly();

/** Of one picture; they say how large things are there and how they are turned. */
const endMarksSchema = z
  .strictObject({ facePx: placePx, pinPx: placePx, camshaftPx: placePx.nullable() })
  .readonly();

/** A point of the rod's middle line. */
const rodPointSchema = z.strictObject({ placePx, sigmaPx }).readonly();

const planeSchema = z.tuple([num, num, num, num, num, num, num, num, num]).readonly();
/** Planes of mm, row by row to pixels: of the arm's near side, and of the visible end of the camshaft, nearer to the camera; the pin's centre in them. */
const armViewSchema = z.strictObject({ armPx: planeSchema, endPx: planeSchema, pinMm: placePx }).readonly();

export const assistQuestionSchema = z
  .discriminatedUnion('of', [
    z.strictObject({ of: z.literal('tape'), named: z.tuple([namedSchema, namedSchema]).readonly() }),
    /** A tape along the rod, of which nothing is named: where its numerals cannot be read, readings count along the rod from a start of no meaning. */
    z.strictObject({ of: z.literal('tape-strokes'), facePx: placePx, pinPx: placePx }),
    /** An edge of the blade, where it was pointed to; from, to: two graduations, so far apart. */
    z.strictObject({
      of: z.literal('tape-edge'),
      fromPx: placePx,
      toPx: placePx,
      lengthMm: z.number().positive(),
      nearPx: placePx,
    }),
    /** The round end of pin or camshaft; lengthPx: from chamber face to pin, which says how large things are. */
    z.strictObject({
      of: z.enum(['clevis-pin', 'camshaft-end']),
      placePx,
      sigmaPx,
      lengthPx: z.number().positive(),
      /** Marks here and in a second picture, whose mark of this end is kept: the same point of the metal is sought, not the middle. */
      same: z
        .strictObject({ here: endMarksSchema, known: endMarksSchema, knownSigmaPx: sigmaPx })
        .readonly()
        .nullable(),
    }),
    /** The clamp band's rim; nearPx: where it was pointed to. */
    z.strictObject({
      of: z.literal('clamp-band'),
      facePx: placePx,
      pinPx: placePx,
      nearPx: placePx.nullable(),
    }),
    /** Two points of the push rod's middle line; tape: graduations of a tape along it, which say how wide the rod is. */
    z.strictObject({
      of: z.literal('rod-line'),
      facePx: placePx,
      faceSigmaPx: sigmaPx,
      pinPx: placePx,
      tape: z.array(namedSchema).min(4).readonly(),
    }),
    /** Edges across the rod near the chamber face's mark, of which one is meant; rod: two points of its middle line, the one nearer to the face first. */
    z.strictObject({
      of: z.literal('chamber-face'),
      facePx: placePx,
      sigmaPx,
      rod: z.tuple([rodPointSchema, rodPointSchema]).readonly(),
      tape: z.array(namedSchema).min(4).readonly(),
    }),
    /** The end of the camshaft by how the arm has turned in a second picture. */
    z.strictObject({ of: z.literal('arm-turn'), here: armViewSchema, there: armViewSchema }),
  ])
  .readonly();

const foundMarkSchema = z
  .strictObject({
    placePx,
    sigmaPx,
    /** Of a graduation. */
    readingMm: z.number().nullable(),
    /** Of a point on an edge: how that runs, from side to side. */
    edgePx: z.array(placePx).readonly().optional(),
  })
  .readonly();

export const assistSightSchema = z
  .strictObject({
    marks: z.array(foundMarkSchema).min(1).readonly(),
    /** Of a tape of which nothing was named: the readings are those of its numerals. */
    isRead: z.literal(true).optional(),
  })
  .readonly();

export const assistFailureSchema = z.union([
  visionFailureSchema,
  /** No multiples of a quarter inch, nor of five millimetres. */
  z.strictObject({ code: z.literal('tape/odd-readings') }),
  /** No strokes along the rod that are surely a tape's. */
  z.strictObject({ code: z.literal('tape/not-seen') }),
  z.strictObject({ code: z.literal('tape/named-near'), leastMm: z.number() }),
  z.strictObject({ code: z.literal('tape/strokes-small'), spacingPx: z.number(), leastPx: z.number() }),
  /** Steps of brightness that lie on one line, of those looked at. */
  z.strictObject({ code: z.literal('tape/no-edge'), share: z.number() }),
  /** Darkness where strokes should be, over that of the darkest. */
  z.strictObject({ code: z.literal('tape/no-lattice'), contrast: z.number() }),
  z.strictObject({ code: z.literal('tape/two-ways') }),
  z.strictObject({ code: z.literal('tape/few-strokes'), found: z.int(), sought: z.int() }),
  /** Share of the way round where an edge was seen on one ellipse. */
  z.strictObject({ code: z.literal('disc/not-round'), share: z.number() }),
  /** Round, but nothing in it that tells its middle. */
  z.strictObject({ code: z.literal('disc/no-centre-mark') }),
  /** Its rim does not tell its middle within half a pixel. */
  z.strictObject({ code: z.literal('disc/loose-centre-mark') }),
  z.strictObject({ code: z.literal('disc/two-ways'), apartPx: z.number() }),
  /** Found, but no surer than the hand. */
  z.strictObject({ code: z.literal('disc/no-surer'), sigmaPx: z.number() }),
  z.strictObject({ code: z.literal('disc/out-of-picture') }),
  /** Nothing near the mark looks as in the other picture; likeness: of the best, 0 to 1. */
  z.strictObject({ code: z.literal('same/unlike'), likeness: z.number() }),
  /** Smaller and larger parts of it are found in different places. */
  z.strictObject({ code: z.literal('same/two-ways'), apartPx: z.number() }),
  z.strictObject({ code: z.literal('band/none') }),
  /** Edges were seen, but none with what a band has beside its rim. */
  z.strictObject({ code: z.literal('band/one-rim') }),
  z.strictObject({ code: z.literal('band/two-ways') }),
  z.strictObject({ code: z.literal('band/elsewhere'), offPx: z.number() }),
  /** Its axis ratio is told no better than this. */
  z.strictObject({ code: z.literal('band/loose'), uRatio: z.number() }),
  /** How wide the rod is, is told no better than this part of it. */
  z.strictObject({ code: z.literal('rod/loose-scale'), u: z.number() }),
  z.strictObject({ code: z.literal('rod/no-edges') }),
  /** Share of the rod's length along which the edge that is seen less is seen. */
  z.strictObject({ code: z.literal('rod/one-edge'), seen: z.number() }),
  z.strictObject({ code: z.literal('rod/two-ways'), apartPx: z.number() }),
  /** The tape does not tell how wide and how slanted the rod is. */
  z.strictObject({ code: z.literal('face/loose-scale') }),
  z.strictObject({ code: z.literal('face/no-edge') }),
  z.strictObject({ code: z.literal('face/no-surer') }),
  /** Spots that turn alike. */
  z.strictObject({ code: z.literal('arm/unseen'), spots: z.int() }),
  z.strictObject({ code: z.literal('arm/two-ways'), spots: z.int() }),
  /** Turning alike, but not about an arm's length from the pin. */
  z.strictObject({ code: z.literal('arm/no-turn'), armMm: z.number() }),
]);

export type AssistQuestion = z.infer<typeof assistQuestionSchema>;
export type EndQuestion = Extract<AssistQuestion, { readonly of: 'clevis-pin' | 'camshaft-end' }>;
export type EndMarks = z.infer<typeof endMarksSchema>;
export type ArmView = z.infer<typeof armViewSchema>;
export type FoundMark = z.infer<typeof foundMarkSchema>;
export type AssistSight = z.infer<typeof assistSightSchema>;
export type AssistFailure = z.infer<typeof assistFailureSchema>;
export type FailureOf<Prefix extends string> = Extract<
  AssistFailure,
  { readonly code: `${Prefix}/${string}` }
>;
