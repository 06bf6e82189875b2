/** The words of the whole inspection: the vehicle, its conditions, its people. */

import type { Answer } from '../../record/parts.ts';
import type { WheelEndState } from '../../record/purpose-results.ts';
import type { AxleKind, VehicleKind } from '../../record/vehicle.ts';
import type { Position } from '../../record/wheel-end.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import type { KeptHead } from '../storage/kept-head.ts';

export const VEHICLE_KIND_NAMES: Readonly<Record<VehicleKind, string>> = {
  truck: 'Truck',
  tractor: 'Tractor',
  trailer: 'Trailer',
  dolly: 'Dolly',
  bus: 'Bus',
};

export const AXLE_KIND_NAMES: Readonly<Record<AxleKind, string>> = {
  steer: 'Steer',
  drive: 'Drive',
  trailer: 'Trailer',
  lift: 'Lift',
};

export const ANSWER_NAMES: Readonly<Record<Answer, string>> = {
  yes: 'Yes',
  no: 'No',
  'cannot-tell': 'Cannot tell',
};

export const INSPECTION = {
  plan: 'Plan view',
  planHint: 'Seen from above, front at the top. Touch a wheel end to work on it.',
  noAxles: 'Add the axles from front to back.',
  front: 'Front',
  addAxle: (kind: AxleKind) => `Add ${AXLE_KIND_NAMES[kind].toLowerCase()} axle`,
  axle: (number: number) => `Axle ${number}`,
  axles: 'Axles',
  axleKind: (number: number) => `Kind of axle ${number}`,
  kindNotSaid: 'not said',
  removeAxle: (number: number) => `Remove axle ${number}`,
  remove: 'Remove',
  removeAxleAsk: (number: number) =>
    `Remove axle ${number} with all that was entered for its two wheel ends? Undo brings it back.`,
  vehicle: 'Vehicle',
  unit: 'Unit',
  kind: 'Kind',
  serialNumber: 'Serial number',
  owner: 'Owner',
  people: 'Inspector',
  name: 'Name',
  qualification: 'Qualification, and who vouches for it',
  qualificationHint: 'The tool makes nobody qualified: local rules say who may inspect and repair brakes.',
  review: 'Review',
  reviewHint: 'For a second person who looks at the pictures and numbers.',
  reviewBy: 'Reviewed by',
  reviewNote: 'What the reviewer says',
  reviewDone: 'Note the review',
  reviewed: (by: string, day: string) => `${by}, ${day}`,
  rules: 'Axles and the whole vehicle',
  toLookAt: (count: number) => `${count} to look at`,
  leftRight: (axle: number, difference: string) => `Axle ${axle}, stroke left minus right: ${difference}`,
  now: 'As it is now',
  handOver: 'Hand over',
  report: 'Open the report',
  reportHint: 'Pages to print or to keep as PDF.',
  back: 'Vehicle',
  underWay: 'Measuring again …',
} as const;

export const CONDITIONS = {
  heading: 'Conditions',
  procedure: 'Pressure by',
  pressureBefore: 'Reservoir gauge before the application',
  pressureHeld: 'Reservoir gauge while held',
  gauge: 'Photo of the gauge',
  gaugeAdd: 'Add a photo of the gauge',
  gaugeDrop: 'Take the photo out',
  psi: 'psi',
  pressureWrong: 'Type a pressure from 0 to 290 psi (2000 kPa).',
  allMet: 'all said and met',
  open: (count: number) => `${count} missing or not as asked`,
} as const;

export const positionName = ({ axle, side }: Position) => `Axle ${axle}, ${side}`;

export const STATE_NAMES: Readonly<Record<WheelEndState, string>> = {
  'not-started': 'Not started',
  begun: 'Begun',
  'within limit': 'Within limit',
  'over limit': 'Over limit',
  'not decided': 'Not decided',
};

/** What the state rests on belongs to it. */
export function stateText({ state, basis, repaired, afterRepair }: WheelEndResults): string {
  const name = STATE_NAMES[state];
  const byHand = basis === 'hand' ? [BY_HAND] : [];
  const after = repaired && afterRepair.strokeMm !== null ? [AFTER_REPAIR] : [];
  return [name, ...byHand, ...after].join(', ');
}

const BY_HAND = 'by hand';
const AFTER_REPAIR = 'after repair';

export const countedText = (count: number, state: WheelEndState) =>
  `${count} ${STATE_NAMES[state].toLowerCase()}`;

/** What an inspection of the list came to, as far as it is known. */
export function headText({ wheelEnds, strokes, inspector }: KeptHead): string {
  const over = strokes === null ? 0 : overNow(strokes);
  const measured = wheelEnds === 1 ? '1 wheel end' : `${wheelEnds} wheel ends`;
  const parts = [measured, over > 0 ? `${over} over limit` : '', inspector];
  return parts.filter((part) => part !== '').join(', ');
}

/** As things are now: a wheel end measured after its repair counts by that. */
function overNow(strokes: NonNullable<KeptHead['strokes']>): number {
  const places = new Map(
    [...strokes]
      .sort((a, b) => Number(a.purpose === 'after-repair') - Number(b.purpose === 'after-repair'))
      .map(({ position, outcome }) => [`${position.axle} ${position.side}`, outcome]),
  );
  return [...places.values()].filter((outcome) => outcome === 'over limit').length;
}
