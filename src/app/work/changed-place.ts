/** What an action changes, as the record's history names it: '2-left/as-found/marks'. */
import type { InspectionRecord } from '../../record/record.ts';
import type { Action, Target } from './actions.ts';

/** Null for what is no work of its own: a picture that comes in is told by what is done with it. */
export function changedPlace(record: InspectionRecord, target: Target, action: Action): string | null {
  const part = PARTS[action.type];
  if (part === null) return null;
  if (OF_THE_INSPECTION.has(action.type)) return part;
  const wheelEnd = record.wheelEnds.find(({ id }) => id === target.wheelEndId);
  if (!wheelEnd) return part;
  const { axle, side } = wheelEnd.position;
  const measurement = wheelEnd.measurements.find(({ id }) => id === target.measurementId);
  const purpose = measurement && OF_A_MEASUREMENT.has(part) ? [measurement.purpose] : [];
  return [`${axle}-${side}`, ...purpose, part].join('/');
}

const OF_THE_INSPECTION: ReadonlySet<Action['type']> = new Set([
  'set-vehicle',
  'add-axle',
  'add-wheel-end',
  'set-axle-kind',
  'remove-axle',
  'set-conditions',
  'set-inspector',
  'set-review',
]);

const OF_A_MEASUREMENT: ReadonlySet<string> = new Set([
  'pictures',
  'marks',
  'references',
  'over-stroke-mark',
]);

const PARTS: Readonly<Record<Action['type'], string | null>> = {
  'set-vehicle': 'vehicle',
  'add-axle': 'vehicle',
  'add-wheel-end': 'vehicle',
  'set-axle-kind': 'vehicle',
  'remove-axle': 'vehicle',
  'set-conditions': 'conditions',
  'set-inspector': 'inspector',
  'set-review': 'review',
  'add-capture': null,
  'set-position': 'position',
  'set-chamber': 'chamber',
  'set-identification': 'chamber',
  'set-wheel-end': 'notes',
  'answer-check': 'cause',
  'put-line': 'readings-and-repairs',
  'drop-line': 'readings-and-repairs',
  'add-measurement': 'measurements',
  'drop-measurement': 'measurements',
  'set-camera-profile': 'references',
  'set-references': 'references',
  'set-camera-still': 'references',
  'set-over-stroke': 'over-stroke-mark',
  'set-band-colour': 'over-stroke-mark',
  'take-view': 'pictures',
  'drop-view': 'pictures',
  'swap-views': 'pictures',
  'take-followed': 'marks',
  'place-mark': 'marks',
  'move-mark': 'marks',
  'place-target': 'marks',
  'place-ties': 'marks',
  'take-found': 'marks',
  'delete-mark': 'marks',
  'set-reading': 'marks',
};
