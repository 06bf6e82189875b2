/** npm run --silent inspect -- RECORD.json: what a whole inspection comes to, as one JSON object; 2 for bad input. */
import { inspectionResults } from '../record/inspection-results.ts';
import { assess } from '../record/results.ts';
import { refuse } from './command-line.ts';
import { recordOfFile } from './record-file.ts';

const [path, ...others] = process.argv.slice(2);
if (path === undefined || others.length > 0)
  refuse('Name one record: npm run --silent inspect -- RECORD.json');
const record = recordOfFile(path);
const { axles, ...results } = inspectionResults(record, (wheelEnd, measurement) =>
  assess(record, wheelEnd, measurement),
);
// The ends of an axle stand in full among the wheel ends.
const named = axles.map(({ left, right, ...axle }) => ({
  ...axle,
  left: left?.id ?? null,
  right: right?.id ?? null,
}));
const { id, vehicle } = record;
process.stdout.write(
  `${JSON.stringify({ record: id, unit: vehicle.unit, ...results, axles: named }, null, 2)}\n`,
);
