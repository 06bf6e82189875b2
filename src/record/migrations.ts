/**
 * One step for each older version of the record: from the data of that version to the data of the next.
 * A step reads plain data, leaves what it does not understand to the check that follows, and is tested with a file of its
 * version that stays in the tests for ever.
 */
type Data = Readonly<Record<string, unknown>>;

export const MIGRATIONS: ReadonlyMap<number, (data: unknown) => unknown> = new Map([
  [1, toVersion2],
  [2, toVersion3],
  [3, toVersion4],
  [4, toVersion5],
  [5, toVersion6],
  [6, toVersion7],
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

/** Version 4 knows the whole inspection: axles, conditions, people, readings, causes, repairs, history. */
function toVersion4(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 4,
    vehicle: changed(record.vehicle, (vehicle) => ({
      ...vehicle,
      kind: null,
      serialNumber: '',
      owner: '',
      axles: Array.from({ length: lastAxle(record.wheelEnds) }, () => ({ kind: null })),
    })),
    inspector: { name: '', qualification: '' },
    conditions: {
      wheelsChocked: null,
      engineOff: null,
      springBrakesReleased: null,
      fullApplication: null,
      drumsCold: null,
      procedure: 'roadside',
      pressureBeforeKpa: null,
      pressureHeldKpa: null,
      gaugeCaptureId: null,
    },
    wheelEnds: each(record.wheelEnds, (wheelEnd) => ({
      ...wheelEnd,
      identification: { portBoss: null, tag: null, marking: '', brake: null, captureId: null },
      adjuster: null,
      adjusterCheck: null,
      measurements: each(wheelEnd.measurements, withProposals),
      handReadings: [],
      otherReadings: [],
      causeAnswers: [],
      repairs: [],
      notes: '',
      photos: [],
    })),
    review: null,
    history: [],
  }));
}

/** Version 5 keeps of a capture when its file was written and when it was taken in, and the time in a movie's header. */
function toVersion5(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 5,
    captures: each(record.captures, (capture) => ({
      ...capture,
      fileWrittenAt: null,
      addedAt: null,
      clip: changed(capture.clip, (clip) => ({ ...clip, headerTime: null })),
    })),
  }));
}

/** Version 6 knows frames of a followed clip that were put right by hand, and the colour of the over-stroke mark's band. */
function toVersion6(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 6,
    wheelEnds: each(record.wheelEnds, (wheelEnd) => ({
      ...wheelEnd,
      measurements: each(wheelEnd.measurements, (measurement) => ({
        ...measurement,
        followed: changed(measurement.followed, (followed) => ({
          ...followed,
          track: changed(followed.track, (track) => ({ ...track, corrections: [] })),
        })),
        overStrokeMark: changed(measurement.overStrokeMark, ({ released, applied }) => ({
          released: changed(released, withoutColour),
          applied: changed(applied, withoutColour),
          bandColour: null,
        })),
      })),
    })),
  }));
}

/** Version 7 keeps of a clip whether its frames came from the decoder or from a player. */
function toVersion7(data: unknown): unknown {
  return changed(data, (record) => ({
    ...record,
    version: 7,
    captures: each(record.captures, (capture) => ({
      ...capture,
      clip: changed(capture.clip, (clip) => ({ ...clip, framesBy: null })),
    })),
  }));
}

/** What it looked for was not kept. */
function withoutColour(sight: Data): Data {
  return { ...sight, proposal: changed(sight.proposal, (proposal) => ({ ...proposal, bandColour: null })) };
}

function withProposals(measurement: Data): Data {
  const noProposal = (sight: Data) => ({ ...sight, proposal: null });
  return {
    ...measurement,
    overStrokeMark: changed(measurement.overStrokeMark, ({ released, applied }) => ({
      released: changed(released, noProposal),
      applied: changed(applied, noProposal),
    })),
  };
}

function lastAxle(wheelEnds: unknown): number {
  const axles = each(wheelEnds, ({ position }) => ({
    axle: typeof position === 'object' && position !== null && 'axle' in position ? position.axle : 0,
  }));
  const numbers = Array.isArray(axles) ? axles.map(({ axle }) => Number(axle)) : [];
  return Math.max(0, ...numbers.filter((axle) => Number.isInteger(axle) && axle <= 20));
}

function changed(value: unknown, change: (data: Data) => Data): unknown {
  const isData = typeof value === 'object' && value !== null && !Array.isArray(value);
  return isData ? change(value as Data) : value;
}

function each(list: unknown, change: (data: Data) => Data): unknown {
  return Array.isArray(list) ? list.map((item) => changed(item, change)) : list;
}
