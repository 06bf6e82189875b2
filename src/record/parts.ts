/** The small parts that the record's schemas share. */
import { z } from 'zod';

export const id = z.string().min(1).max(64);
export const LINE_CHARACTERS = 200;
export const line = z.string().max(LINE_CHARACTERS);
export const PARAGRAPH_CHARACTERS = 4000;
export const paragraph = z.string().max(PARAGRAPH_CHARACTERS);
/** A name in the record's own words: a code or a path. */
export const place = z.string().max(200);
export const at = z.iso.datetime();

export const ANSWERS = ['yes', 'no', 'cannot-tell'] as const;
export type Answer = (typeof ANSWERS)[number];
/** Null where nobody answered. */
export const answer = z.enum(ANSWERS).nullable();
