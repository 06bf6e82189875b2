/** The vehicle: what it is called, what it is, and its axles from the front. */
import { z } from 'zod';
import { line } from './parts.ts';

export const VEHICLE_KINDS = ['truck', 'tractor', 'trailer', 'dolly', 'bus'] as const;
export type VehicleKind = (typeof VEHICLE_KINDS)[number];

export const AXLE_KINDS = ['steer', 'drive', 'trailer', 'lift'] as const;
export type AxleKind = (typeof AXLE_KINDS)[number];

export const MOST_AXLES = 20;

export const vehicleSchema = z
  .strictObject({
    unit: line,
    kind: z.enum(VEHICLE_KINDS).nullable(),
    serialNumber: line,
    owner: line,
    /** From the front; the first is axle 1. Kind null: not said. */
    axles: z
      .array(z.strictObject({ kind: z.enum(AXLE_KINDS).nullable() }).readonly())
      .max(MOST_AXLES)
      .readonly(),
  })
  .readonly();

export type Vehicle = z.infer<typeof vehicleSchema>;
