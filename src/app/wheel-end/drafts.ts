/** The forms of a wheel end while they are filled in: every field may still be open. */
import { z } from 'zod';
import { mmFromInches } from '../../basics/units.ts';
import { repairSchema } from '../../record/repair.ts';
import { HAND_QUANTITIES, LIMIT_SENSES, OTHER_QUANTITIES } from '../../record/wheel-end.ts';

const openLength = z.number().nullable();

export const handDraftSchema = z.strictObject({
  quantity: z.enum(HAND_QUANTITIES),
  isDifference: z.boolean(),
  releasedMm: openLength,
  appliedMm: openLength,
  graduationMm: z.number(),
});
export type HandDraft = z.infer<typeof handDraftSchema>;

export const EMPTY_HAND: HandDraft = {
  quantity: 'stroke',
  isDifference: false,
  releasedMm: null,
  appliedMm: null,
  graduationMm: mmFromInches(1 / 16),
};

export const otherDraftSchema = z.strictObject({
  what: z.enum(OTHER_QUANTITIES),
  name: z.string(),
  valueMm: openLength,
  limitMm: openLength,
  limitIs: z.enum(LIMIT_SENSES),
  limitSource: z.string(),
});
export type OtherDraft = z.infer<typeof otherDraftSchema>;

export const EMPTY_OTHER: OtherDraft = {
  what: 'camshaft-play',
  name: '',
  valueMm: null,
  limitMm: null,
  limitIs: 'greatest',
  limitSource: '',
};

/** Parts as they are typed, one to a line. */
export const repairDraftSchema = z.strictObject({ repair: repairSchema, parts: z.string() });
export type RepairDraft = z.infer<typeof repairDraftSchema>;

export const draftNames = (wheelEndId: string) => ({
  hand: (purpose: string) => `hand ${purpose} ${wheelEndId}`,
  other: `other ${wheelEndId}`,
  repair: `repair ${wheelEndId}`,
});
