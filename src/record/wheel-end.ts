/** One wheel end of the vehicle: its chamber, its measurements and readings, what was found and done. */
import { z } from 'zod';
import { CAUSE_CHECKS } from '../finding/causes.ts';
import { chamberSchema } from '../finding/chamber.ts';
import { frameSchema } from '../frames/frame.ts';
import { measurementSchema, PURPOSES } from './measurement-input.ts';
import { ANSWERS, id, line, paragraph } from './parts.ts';
import { ADJUSTER_KINDS, repairSchema } from './repair.ts';
import { MOST_AXLES } from './vehicle.ts';

export const HAND_QUANTITIES = ['stroke', 'free-stroke'] as const;
export const OTHER_QUANTITIES = [
  'camshaft-play',
  'adjuster-end-play',
  'lining-thickness',
  'drum-diameter',
  'other',
] as const;
export const LIMIT_SENSES = ['greatest', 'least'] as const;

export const MOST_READING_MM = 1000;
export const MOST_APPLICATIONS = 100;
export const MOST_TURNS = 40;
export const MOST_PHOTOS = 40;

const positionSchema = z
  .strictObject({ axle: z.int().min(1).max(MOST_AXLES), side: z.enum(['left', 'right']) })
  .readonly();

/** What the chamber shows of itself. Null: nobody looked; 'cannot-tell': somebody did. */
const identificationSchema = z
  .strictObject({
    portBoss: z.enum(['round', 'square', 'cannot-tell']).nullable(),
    tag: z.enum(['none', 'trapezoid', 'cannot-tell']).nullable(),
    /** Letters and numbers as they stand on the housing. */
    marking: line,
    brake: z.enum(['service', 'spring', 'cannot-tell']).nullable(),
    /** Photo of what proves it. */
    captureId: id.nullable(),
  })
  .readonly();

const readingMm = z.number().min(0).max(MOST_READING_MM);

/** Stroke by tape measure. Two readings of one tape from one fixed point of the chamber, or the difference alone. */
const handReadingSchema = z
  .strictObject({
    id,
    purpose: z.enum(PURPOSES),
    quantity: z.enum(HAND_QUANTITIES),
    /** Null where only the difference was noted. */
    releasedMm: readingMm.nullable(),
    /** The reading with the brake applied (or pulled), or the difference. */
    appliedMm: readingMm,
    graduationMm: z.number().positive().max(10),
  })
  .readonly();

const otherReadingSchema = z
  .strictObject({
    id,
    purpose: z.enum(PURPOSES),
    what: z.enum(OTHER_QUANTITIES),
    name: line,
    valueMm: readingMm,
    limitMm: readingMm.nullable(),
    limitIs: z.enum(LIMIT_SENSES),
    /** Whose limit it is: the maker's manual, a shop rule. */
    limitSource: line,
  })
  .readonly();

const markedPoint = z
  .strictObject({
    xPx: z.number().min(-1e5).max(1e5),
    yPx: z.number().min(-1e5).max(1e5),
    sigmaPx: z.number().min(0.01).max(500),
  })
  .readonly();

/** A picture of the wrench with the brake released. Null: that point is not marked. */
const wrenchTurnSchema = z
  .strictObject({
    captureId: id,
    frame: frameSchema.nullable(),
    applicationsBefore: z.int().min(0).max(MOST_APPLICATIONS),
    /** Middle of the hex, and a point far out on the wrench: the same spot of it in every picture. */
    centre: markedPoint.nullable(),
    tip: markedPoint.nullable(),
    /** The arm's own direction, where the camera may have turned: clevis pin and camshaft end. */
    pin: markedPoint.nullable(),
    camshaft: markedPoint.nullable(),
  })
  .readonly();

/** Whether an automatic adjuster takes up when it is backed off and the brake is applied again and again. */
const adjusterCheckSchema = z
  .strictObject({
    /** The person's own. */
    answer: z.enum(['takes-up', 'does-not-take-up', 'cannot-tell']).nullable(),
    /** Applications made. */
    applications: z.int().min(0).max(MOST_APPLICATIONS).nullable(),
    /** Which way the wrench was turned to back the adjuster off, as the pictures show it; taking up is the other way. */
    backedOff: z.enum(['clockwise', 'counter-clockwise']).nullable(),
    /** The camera stood on something, and nobody moved it between the pictures. */
    cameraStill: z.boolean(),
    /** In the course of the applications. */
    turns: z.array(wrenchTurnSchema).max(MOST_TURNS).readonly(),
  })
  .readonly();

export const wheelEndSchema = z
  .strictObject({
    id,
    position: positionSchema,
    chamber: chamberSchema.nullable(),
    identification: identificationSchema,
    adjuster: z.enum(ADJUSTER_KINDS).nullable(),
    adjusterCheck: adjusterCheckSchema.nullable(),
    measurements: z.array(measurementSchema).max(100).readonly(),
    handReadings: z.array(handReadingSchema).max(100).readonly(),
    otherReadings: z.array(otherReadingSchema).max(100).readonly(),
    causeAnswers: z
      .array(z.strictObject({ check: z.enum(CAUSE_CHECKS), answer: z.enum(ANSWERS) }).readonly())
      .max(CAUSE_CHECKS.length)
      .readonly(),
    repairs: z.array(repairSchema).max(40).readonly(),
    notes: paragraph,
    photos: z
      .array(z.strictObject({ captureId: id, caption: line }).readonly())
      .max(MOST_PHOTOS)
      .readonly(),
  })
  .readonly();

export type Identification = z.infer<typeof identificationSchema>;
export type HandReading = z.infer<typeof handReadingSchema>;
export type OtherReading = z.infer<typeof otherReadingSchema>;
export type AdjusterCheck = z.infer<typeof adjusterCheckSchema>;
export type WrenchTurn = AdjusterCheck['turns'][number];
export type WheelEnd = z.infer<typeof wheelEndSchema>;
export type Position = WheelEnd['position'];
