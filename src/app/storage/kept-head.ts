/** What the list of inspections shows of one, so that two hundred can be listed without opening any. */
import type { Outcome } from '../../finding/guard-band.ts';
import type { WithU } from '../../measurement/measured.ts';
import type { InspectionResults } from '../../record/inspection-results.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Position } from '../../record/wheel-end.ts';
import type { KeptRecord } from './database.ts';

export type KeptStroke = {
  readonly position: Position;
  readonly purpose: Purpose;
  readonly strokeMm: WithU;
  readonly outcome: Outcome;
};

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
  readonly strokes: readonly KeptStroke[] | null;
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

export function strokesOf({ wheelEnds }: InspectionResults): readonly KeptStroke[] {
  return wheelEnds.flatMap(({ position, asFound, afterRepair }) =>
    [asFound, afterRepair].flatMap(({ purpose, strokeMm, finding }) =>
      strokeMm && finding ? [{ position, purpose, strokeMm, outcome: finding.outcome }] : [],
    ),
  );
}

/** Every word that was typed is somewhere in it. */
export function headFits({ unit, inspector, createdAt }: KeptHead, typed: string): boolean {
  const text = `${unit} ${inspector} ${createdAt}`.toLocaleLowerCase();
  const words = typed.toLocaleLowerCase().split(/\s+/);
  return words.every((word) => text.includes(word));
}

/** Units are typed by hand: case and spaces do not tell two apart. */
export function isSameUnit(a: string, b: string): boolean {
  const plain = (unit: string) => unit.trim().replace(/\s+/g, ' ').toLocaleLowerCase();
  return plain(a) !== '' && plain(a) === plain(b);
}
