/** A whole record whose free texts are written to break out of the page: the document has the same tags as with plain ones. */
import { expect, test } from 'vitest';
import { reportHtml } from '../../src/app/report/report-html.ts';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { exampleRecord } from '../record/example-record.ts';
import { attributesOf, tagsOf } from './tags.ts';

const HOSTILE = `'"></style><script>alert(1)</script><img src=http://x.invalid onerror=alert(2)>`;

function written(text: string): InspectionRecord {
  const record = exampleRecord();
  return {
    ...record,
    id: text.slice(0, 60),
    vehicle: { ...record.vehicle, unit: text, owner: text, serialNumber: text },
    inspector: { name: text, qualification: text },
    captures: record.captures.map((capture) => ({ ...capture, fileName: text, takenAt: text.slice(0, 60) })),
    cameraProfiles: record.cameraProfiles.map((profile) => ({ ...profile, name: text })),
    wheelEnds: record.wheelEnds.map((wheelEnd) => ({
      ...wheelEnd,
      notes: text,
      identification: { ...wheelEnd.identification, marking: text },
      otherReadings: wheelEnd.otherReadings.map((one) => ({ ...one, name: text, limitSource: text })),
      photos: wheelEnd.photos.map((photo) => ({ ...photo, caption: text })),
      repairs: wheelEnd.repairs.map((repair) => ({ ...repair, by: text, work: text, parts: [text] })),
    })),
    review: record.review && { ...record.review, by: text, note: text },
    history: record.history.map((line) => ({ ...line, by: text, place: text })),
  };
}

/** Unmeasured: its numbers are tested elsewhere. */
function reportOf(record: InspectionRecord): string {
  const results = inspectionResults(record, () => null);
  const madeAt = '2026-05-12T16:00:00Z';
  const input = {
    record,
    results,
    clips: new Map(),
    unit: 'mm',
    engine: '1',
    madeAt,
    signedBy: null,
  } as const;
  return reportHtml(input, new Map(), { paper: 'a4', fonts: [] });
}

test('free texts written to break out change no tag and no attribute of the report', () => {
  const [plain, hostile] = [reportOf(written('plain')), reportOf(written(HOSTILE))];
  expect(hostile).toContain('&lt;script&gt;alert(1)');
  expect(tagsOf(hostile)).toEqual(tagsOf(plain));
  expect(attributesOf(hostile)).toEqual(attributesOf(plain));
  const styles = hostile.slice(hostile.indexOf('<style>'), hostile.indexOf('</style>'));
  expect(styles).not.toMatch(/alert\(|http:\/\/|<\//);
});
