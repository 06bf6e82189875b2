/** The conditions under which strokes were taken: asked once for the whole inspection. */
import { z } from 'zod';
import { PROCEDURES } from '../finding/procedure.ts';
import { answer, id } from './parts.ts';

export const MOST_PRESSURE_KPA = 2000;
const pressureKpa = z.number().min(0).max(MOST_PRESSURE_KPA).nullable();

export const conditionsSchema = z
  .strictObject({
    wheelsChocked: answer,
    engineOff: answer,
    springBrakesReleased: answer,
    /** The pedal went fully down and was held. */
    fullApplication: answer,
    drumsCold: answer,
    /** By which rule the pressure is judged. */
    procedure: z.enum(PROCEDURES),
    /** Reservoir gauge before the pedal went down, and while it was held. */
    pressureBeforeKpa: pressureKpa,
    pressureHeldKpa: pressureKpa,
    /** The photo of the gauge. */
    gaugeCaptureId: id.nullable(),
  })
  .readonly();

export type Conditions = z.infer<typeof conditionsSchema>;
