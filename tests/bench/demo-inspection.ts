/** npx tsx tests/bench/demo-inspection.ts: writes the demo inspection's record, sample-media/inspection/record.json. */
import { writeFileSync } from 'node:fs';
import { newRecord } from '../../src/app/work/new-record.ts';
import { kpaFromPsi } from '../../src/basics/units.ts';
import type { Capture } from '../../src/captures/capture.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { noteHistory } from '../../src/record/note-history.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { demoCapture } from './demo-capture.ts';
import { SAMPLE_MEDIA, truthOf } from './demo-truth.ts';
import { captureIdOf, DEMO_TECHNICIAN, demoWheelEnds, MEASURED_SETS } from './demo-wheel-ends.ts';

const RECORD_FILE = `${SAMPLE_MEDIA}/inspection/record.json`;
const GAUGE = { id: 'gauge', place: 'inspection/gauge.jpg' } as const;

/** When what was done, in the order of the walk round the trailer. */
const STEPS: readonly (readonly [at: string, place: string])[] = [
  ['14:22:00', 'vehicle'],
  ['14:26:00', 'conditions'],
  ['14:36:00', '1-right/as-found/marks'],
  ['14:45:00', '1-left/as-found/marks'],
  ['14:57:00', '2-left/as-found/marks'],
  ['15:07:00', '2-right/as-found/marks'],
  ['15:12:00', '3-left/readings-and-repairs'],
  ['15:31:00', '2-left/cause'],
  ['18:55:00', '2-left/readings-and-repairs'],
  ['19:21:00', '2-left/after-repair/marks'],
];

writeFileSync(RECORD_FILE, recordText(demoInspection()));
console.log(RECORD_FILE);

function demoInspection(): InspectionRecord {
  const begun = newRecord({
    id: 'demo-inspection-gt-21',
    createdAt: time('14:20:00'),
    unit: 'Gravel trailer GT-21',
    ruleSetId: US_RULE_SET.id,
  });
  const record: InspectionRecord = {
    ...begun,
    vehicle: {
      ...begun.vehicle,
      kind: 'trailer',
      serialNumber: 'INVENTED-0021',
      owner: 'County road department (invented)',
      axles: [{ kind: 'trailer' }, { kind: 'trailer' }, { kind: 'trailer' }],
    },
    inspector: {
      name: DEMO_TECHNICIAN,
      qualification: 'Brake training of the department, one year; vouched for by the shop lead (invented)',
    },
    conditions: {
      ...begun.conditions,
      wheelsChocked: 'yes',
      engineOff: 'yes',
      springBrakesReleased: 'yes',
      fullApplication: 'yes',
      procedure: 'roadside',
      pressureBeforeKpa: Math.round(kpaFromPsi(95)),
      pressureHeldKpa: Math.round(kpaFromPsi(86)),
      gaugeCaptureId: GAUGE.id,
    },
    captures: captures(),
    wheelEnds: demoWheelEnds(),
  };
  return STEPS.reduce((to, [at, place]) => noteHistory(to, { at: time(at), act: 'changed', place }), record);
}

function captures(): Capture[] {
  const ofSets = MEASURED_SETS.flatMap((set) =>
    truthOf(set.set).views.map(({ state, file }) =>
      demoCapture(captureIdOf(set, state), `${set.set}/${file}`),
    ),
  );
  return [demoCapture(GAUGE.id, GAUGE.place), ...ofSets];
}

/** The day of the pictures; the yard's clock is five hours behind. */
function time(ofDay: string): string {
  return `2026-05-12T${ofDay}.000Z`;
}
