import { US_RULE_SET } from '../../finding/rule-sets.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { Position } from '../../record/wheel-end.ts';
import { work } from '../stores.ts';
import { newRecord } from '../work/new-record.ts';

/** Opens the record of a new inspection, of which nothing is known yet, and answers its id. */
export function startInspection(unit = ''): string {
  const id = crypto.randomUUID();
  const createdAt = new Date().toISOString();
  work.openRecord(newRecord({ id, createdAt, unit, ruleSetId: US_RULE_SET.id }), { id, place: null });
  return id;
}

/** With one axle, ready for the pictures of its left wheel end: somebody came with pictures in hand. */
export function startWheelEnd(unit = ''): string {
  const recordId = startInspection(unit);
  const [left, right] = [crypto.randomUUID(), crypto.randomUUID()];
  work.act({ type: 'add-axle', kind: 'trailer', wheelEndIds: [left, right] });
  measureWheelEnd(left, 'as-found');
  return recordId;
}

/** Opens a new measurement of the wheel end. */
export function measureWheelEnd(wheelEndId: string, purpose: Purpose): void {
  const measurementId = crypto.randomUUID();
  work.actOn({ wheelEndId, measurementId: null }, { type: 'add-measurement', id: measurementId, purpose });
  work.turnTo({ wheelEndId, measurementId });
}

/** The wheel end's sheet; a place of the plan that the record does not hold yet is put into it. */
export function openWheelEnd(position: Position): void {
  const record = work.getState().open?.history.present;
  const known = record?.wheelEnds.find(
    ({ position: { axle, side } }) => axle === position.axle && side === position.side,
  );
  const id = known?.id ?? crypto.randomUUID();
  if (!known) work.act({ type: 'add-wheel-end', id, position });
  work.showWheelEnd(id);
}
