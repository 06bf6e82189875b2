/**
 * One step for each older version of the record: from the data of that version to the data of the next.
 * A step reads plain data, leaves what it does not understand to the check that follows, and is tested with a file of its
 * version that stays in the tests for ever.
 */
type Data = Readonly<Record<string, unknown>>;

export const MIGRATIONS: ReadonlyMap<number, (data: unknown) => unknown> = new Map([
  [1, toVersion2],
  [2, toVersion3],
]);

/** Version 2 knows camera profiles, the printed target, the pin's end, and whether a tape touches it. */
function toVersion2(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 2,
    cameraProfiles: [],
    wheelEnds: each(record.wheelEnds, (wheelEnd) => ({
      ...wheelEnd,
      measurements: each(wheelEnd.measurements, (measurement) => ({
        ...measurement,
        cameraProfileId: null,
        references: changed(measurement.references, (references) => ({
          ...references,
          tape: changed(references.tape, (tape) => ({ ...tape, touchesPin: false })),
          target: null,
          pinEnd: null,
        })),
      })),
    })),
  }));
}

/** Version 3 knows what came of following a clip. */
function toVersion3(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 3,
    wheelEnds: each(record.wheelEnds, (wheelEnd) => ({
      ...wheelEnd,
      measurements: each(wheelEnd.measurements, (measurement) => ({ ...measurement, followed: null })),
    })),
  }));
}

function changed(value: unknown, change: (data: Data) => Data): unknown {
  const isData = typeof value === 'object' && value !== null && !Array.isArray(value);
  return isData ? change(value as Data) : value;
}

function each(list: unknown, change: (data: Data) => Data): unknown {
  return Array.isArray(list) ? list.map((item) => changed(item, change)) : list;
}
