/**
 * The record: one JSON document with what was entered. Results are never kept in it: they are computed from it.
 * Lengths in millimetres, image points in pixels of the upright picture, times in ISO 8601 or in track ticks.
 * A record is evidence: a key that the format does not know is refused, never dropped.
 */
import { z } from 'zod';
import { cameraProfileSchema } from '../captures/camera-profile.ts';
import { captureSchema } from '../captures/capture.ts';
import { conditionsSchema } from './conditions.ts';
import { historyEntrySchema } from './history-entry.ts';
import { at, id, line, paragraph } from './parts.ts';
import { vehicleSchema } from './vehicle.ts';
import { wheelEndSchema } from './wheel-end.ts';

export const RECORD_FORMAT = 'strokewitness-record';
export const RECORD_VERSION = 7;

export const recordSchema = z
  .strictObject({
    format: z.literal(RECORD_FORMAT),
    version: z.literal(RECORD_VERSION),
    id,
    createdAt: at,
    vehicle: vehicleSchema,
    /** Qualification as the person states it, and who vouches for it. The tool makes nobody qualified. */
    inspector: z.strictObject({ name: line, qualification: line }).readonly(),
    conditions: conditionsSchema,
    /** Which rule set of src/finding/rule-sets holds. */
    ruleSetId: id,
    captures: z.array(captureSchema).max(1000).readonly(),
    cameraProfiles: z.array(cameraProfileSchema).max(20).readonly(),
    wheelEnds: z.array(wheelEndSchema).max(40).readonly(),
    /** What a second person says who looked at it all. */
    review: z.strictObject({ by: line, at, note: paragraph }).readonly().nullable(),
    history: z.array(historyEntrySchema).max(20_000).readonly(),
  })
  .readonly();

export type InspectionRecord = z.infer<typeof recordSchema>;
