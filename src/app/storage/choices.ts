/** What a person chooses for all inspections on this device. Small, and needed before the first paint: local storage. */
import { z } from 'zod';
import { LENGTH_UNITS } from '../../basics/length-text.ts';

const choicesSchema = z.object({
  lengthUnit: z.enum(LENGTH_UNITS).catch('fraction'),
  cautionsRead: z.boolean().catch(false),
});

export type Choices = z.infer<typeof choicesSchema>;

const KEY = 'strokewitness-choices';

export function readChoices(): Choices {
  try {
    return choicesSchema.parse(JSON.parse(localStorage.getItem(KEY) ?? '{}'));
  } catch {
    return choicesSchema.parse({});
  }
}

/** A browser that keeps nothing still works: the choice then lasts as long as the page. */
export function writeChoices(choices: Choices): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choices));
  } catch {
    return;
  }
}
