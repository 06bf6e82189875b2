/** The chamber as the technician identified it. What is not proven is null, and the lower limit then holds. */
import { z } from 'zod';

export const CHAMBER_FAMILIES = ['clamp', 'dd3', 'bolt', 'rotochamber', 'unlisted'] as const;
export type ChamberFamily = (typeof CHAMBER_FAMILIES)[number];

export const STROKE_CLASSES = ['standard', 'long'] as const;
export type StrokeClass = (typeof STROKE_CLASSES)[number];

export const TYPE_CHARACTERS = 8;
export const MOST_STROKE_MM = 200;

export const chamberSchema = z
  .strictObject({
    family: z.enum(CHAMBER_FAMILIES),
    /** Size number or letter as the published table names it: '30', 'B'. */
    type: z.string().min(1).max(TYPE_CHARACTERS),
    /** Long only with a positive mark on the chamber; no proof of long stroke is standard. */
    strokeClass: z.enum(STROKE_CLASSES),
    /** Rated stroke marked on the chamber, where there is one: it is not the limit. */
    ratedStrokeMm: z.number().positive().max(MOST_STROKE_MM).nullable(),
    /** A limit that the maker marked on the chamber, for chambers that the table does not list. */
    markedLimitMm: z.number().positive().max(MOST_STROKE_MM).nullable(),
  })
  .readonly();

export type Chamber = z.infer<typeof chamberSchema>;
