/** What the list of inspections shows of one, so that two hundred can be listed without opening any. */
import type { InspectionRecord } from '../../record/record.ts';
import type { InspectedStroke } from '../../record/unit-history.ts';
import type { KeptRecord } from './database.ts';

export type KeptHead = {
  /** Of the keeping, as KeptRecord's. */
  readonly id: string;
  readonly recordId: string;
  readonly createdAt: string;
  readonly savedAt: string;
  readonly unit: string;
  readonly inspector: string;
  readonly wheelEnds: number;
  /** What the strokes came to when the whole inspection was last looked at; null where it never was. */
  readonly strokes: readonly InspectedStroke[] | null;
};

export function headOf({ id, savedAt, record }: KeptRecord, strokes: KeptHead['strokes']): KeptHead {
  const { id: recordId, createdAt, vehicle, inspector, wheelEnds } = record;
  return {
    id,
    recordId,
    createdAt,
    savedAt,
    unit: vehicle.unit,
    inspector: inspector.name,
    wheelEnds: wheelEnds.filter(hasWork).length,
    strokes,
  };
}

function hasWork({ measurements, handReadings }: InspectionRecord['wheelEnds'][number]): boolean {
  return measurements.some(({ views }) => views.length > 0) || handReadings.length > 0;
}

/** Every word that was typed is somewhere in it. */
export function headFits({ unit, inspector, createdAt }: KeptHead, typed: string): boolean {
  const text = `${unit} ${inspector} ${createdAt}`.toLocaleLowerCase();
  const words = typed.toLocaleLowerCase().split(/\s+/);
  return words.every((word) => text.includes(word));
}
