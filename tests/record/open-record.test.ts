import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openRecord, RECORD_LIMIT_CHARACTERS } from '../../src/record/open-record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { EXAMPLE_PATH, exampleRecord, exampleText } from './example-record.ts';

// biome-ignore lint/suspicious/noExplicitAny: a record is spoilt here in ways that its type forbids.
type Loose = any;

function spoilt(spoil: (record: Loose) => void): string {
  const record: Loose = JSON.parse(exampleText());
  spoil(record);
  return JSON.stringify(record);
}

/** A track of two frames of the example's clip, one point. */
function followed(columns: object) {
  const point = { kind: 'still', markId: 's1', xCentiPx: [1, 2], yCentiPx: [1, 2], sigmaMilliPx: [9, 9] };
  return {
    track: {
      id: 't1',
      captureId: 'c6',
      state: 'released',
      seed: { index: 12, timeTicks: 36_000 },
      corrections: [],
      firstIndex: 12,
      timeTicks: [36_000, 39_000],
      points: [{ ...point, ...columns }],
    },
    sideViews: [],
  };
}

test('a record with a followed clip opens', () => {
  const text = spoilt((r) => Object.assign(r.wheelEnds[1].measurements[1], { followed: followed({}) }));
  expect(openRecord(text)).toMatchObject({ ok: true });
});

test('eight wheel ends, each filmed for a minute and followed, are far from what is refused', () => {
  const frames = 1800;
  const column = (from: number) => Array.from({ length: frames }, (_, i) => from + (i % 500));
  // What stands still, face, pin, camshaft's end and graduations: as many as a clip is followed by at the most.
  const points = Array.from({ length: 36 + 3 + 12 }, (_, i) => ({
    kind: 'still',
    markId: `still-${i}`,
    xCentiPx: column(123_000),
    yCentiPx: column(64_000),
    sigmaMilliPx: column(100),
  }));
  const text = spoilt((r) => {
    r.captures.find(({ id }: Loose) => id === 'c6').clip.frameCount = frames;
    const { track, sideViews } = followed({});
    const long = { ...track, firstIndex: 0, timeTicks: column(0), points };
    r.wheelEnds[1].measurements[1].followed = { track: long, sideViews };
  });
  const opened = openRecord(text);
  if (!opened.ok) throw new Error(opened.failure.code);
  const saved = recordText(opened.value);
  expect(openRecord(saved)).toEqual(opened);
  // And by a camera of 60 frames a second.
  expect(2 * 8 * saved.length).toBeLessThan(RECORD_LIMIT_CHARACTERS);
});

test('a followed clip names one correction of a frame, within the clip', () => {
  const pin = { kind: 'clevis-pin', id: 'p9', xPx: 1, yPx: 1, sigmaPx: 1, placedBy: 'hand' };
  const corrected = (indexes: readonly number[]) =>
    openRecord(
      spoilt((r) => {
        const corrections = indexes.map((index, i) => ({
          frame: { index, timeTicks: 3000 * index },
          marks: [{ ...pin, id: `p${i}` }],
        }));
        r.wheelEnds[1].measurements[1].followed = followed({});
        r.wheelEnds[1].measurements[1].followed.track.corrections = corrections;
      }),
    );
  expect(corrected([12, 13])).toMatchObject({ ok: true });
  expect(corrected([13, 13])).toMatchObject({ failure: { code: 'record/duplicate-id' } });
  expect(corrected([99_999])).toMatchObject({ failure: { code: 'record/frame-outside-clip' } });
});

test('every version that was ever written opens', () => {
  const files = readdirSync('tests/fixtures/records').filter((name) => name.endsWith('.json'));
  expect(files).toContain('version-1.json');
  for (const file of files)
    expect(openRecord(readFileSync(`tests/fixtures/records/${file}`, 'utf8'))).toMatchObject({ ok: true });
});

test('what is opened is what was written', () => {
  expect(exampleRecord()).toEqual(JSON.parse(readFileSync(EXAMPLE_PATH, 'utf8')));
});

test.each<[string, string, object]>([
  ['nothing', '', { code: 'record/not-json' }],
  ['half a file', exampleText().slice(0, 5000), { code: 'record/not-json' }],
  ['a list', '[]', { code: 'record/other-format' }],
  ['null', 'null', { code: 'record/other-format' }],
  ['another document', '{"format":"something-else","version":1}', { code: 'record/other-format' }],
  ['no version', spoilt((r) => delete r.version), { code: 'record/unknown-version' }],
  ['version 0', spoilt((r) => Object.assign(r, { version: 0 })), { code: 'record/unknown-version' }],
  ['version "1"', spoilt((r) => Object.assign(r, { version: '1' })), { code: 'record/unknown-version' }],
  ['version 1.5', spoilt((r) => Object.assign(r, { version: 1.5 })), { code: 'record/unknown-version' }],
  [
    'a newer version, whatever else is in it',
    '{"format":"strokewitness-record","version":8,"wheelEnds":"elsewhere"}',
    { code: 'record/newer-version', version: 8, newest: 7 },
  ],
  ['more than it can hold', ' '.repeat(RECORD_LIMIT_CHARACTERS + 1), { code: 'record/too-large' }],
  ['absurd depth', '['.repeat(100_000), { code: 'record/too-deep' }],
  [
    'absurd depth behind strings with brackets and quotes',
    `{"a":"[[[\\"[[\\\\","b":${'{"c":'.repeat(40)}`,
    { code: 'record/too-deep' },
  ],
])('refuses %s', (_what, text, failure) => {
  expect(openRecord(text)).toMatchObject({ ok: false, failure });
});

test('brackets inside a string are no depth', () => {
  const text = spoilt((r) => Object.assign(r.vehicle, { unit: '[{\\"'.repeat(40) }));
  expect(openRecord(text)).toMatchObject({ ok: true });
});

test.each<[string, (record: Loose) => void, object]>([
  [
    'a missing part',
    (r) => delete r.wheelEnds[1].measurements[0].views[0].marks[2].xPx,
    { path: 'wheelEnds[1].measurements[0].views[0].marks[2].xPx', problem: 'missing' },
  ],
  [
    'a number as text',
    (r) => Object.assign(r.captures[0], { widthPx: '4032' }),
    { path: 'captures[0].widthPx', problem: 'wrong-kind' },
  ],
  [
    'half a pixel count',
    (r) => Object.assign(r.captures[0], { widthPx: 0.5 }),
    { path: 'captures[0].widthPx', problem: 'wrong-kind' },
  ],
  [
    'a mark without uncertainty',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[0].marks[0], { sigmaPx: 0 }),
    { path: 'wheelEnds[0].measurements[0].views[0].marks[0].sigmaPx', problem: 'too-small' },
  ],
  [
    'a position off the vehicle',
    (r) => Object.assign(r.wheelEnds[0].position, { axle: 21 }),
    { path: 'wheelEnds[0].position.axle', problem: 'too-large' },
  ],
  [
    'a mark of no known kind',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[0].marks[0], { kind: 'hub' }),
    { path: 'wheelEnds[0].measurements[0].views[0].marks[0].kind', problem: 'not-one-of' },
  ],
  [
    'a turn of the picture by 45 degrees',
    (r) => Object.assign(r.captures[0], { rotationDeg: 45 }),
    { path: 'captures[0].rotationDeg', problem: 'not-one-of' },
  ],
  [
    'a fingerprint in capitals',
    (r) => Object.assign(r.captures[0], { sha256: 'A'.repeat(64) }),
    { path: 'captures[0].sha256', problem: 'wrong-form' },
  ],
  ['no list', (r) => Object.assign(r, { captures: {} }), { path: 'captures', problem: 'wrong-kind' }],
])('refuses %s and says where', (_what, spoil, failure) => {
  expect(openRecord(spoilt(spoil))).toEqual({ ok: false, failure: { code: 'record/invalid', ...failure } });
});

test('a number beyond all numbers is refused', () => {
  const text = exampleText().replace(/"xPx": [\d.]+/, '"xPx": 1e999');
  expect(openRecord(text)).toMatchObject({ failure: { code: 'record/invalid', problem: 'wrong-kind' } });
});

test.each<[string, (record: Loose) => object, string, string]>([
  ['the record', (r) => r, '', 'result'],
  ['a capture', (r) => r.captures[0], 'captures[0]', 'gps'],
  ['a clip', (r) => r.captures[5].clip, 'captures[5].clip', 'fps'],
  ['a wheel end', (r) => r.wheelEnds[0], 'wheelEnds[0]', 'stroke_mm'],
  ['a chamber', (r) => r.wheelEnds[0].chamber, 'wheelEnds[0].chamber', 'limitMm'],
  [
    'a reference',
    (r) => r.wheelEnds[0].measurements[0].references.tape,
    'wheelEnds[0].measurements[0].references.tape',
    'x',
  ],
  ['a view', (r) => r.wheelEnds[0].measurements[0].views[0], 'wheelEnds[0].measurements[0].views[0]', 'x'],
  [
    'a mark',
    (r) => r.wheelEnds[0].measurements[0].views[0].marks[0],
    'wheelEnds[0].measurements[0].views[0].marks[0]',
    'z',
  ],
  [
    'a frame',
    (r) => r.wheelEnds[1].measurements[1].views[0].frame,
    'wheelEnds[1].measurements[1].views[0].frame',
    't',
  ],
  [
    'a crop',
    (r) => r.wheelEnds[0].measurements[0].overStrokeMark.applied.crop,
    'wheelEnds[0].measurements[0].overStrokeMark.applied.crop',
    'x',
  ],
])('refuses a key that the format does not know in %s', (_what, part, path, key) => {
  const text = spoilt((r) => Object.assign(part(r), { [key]: 1 }));
  expect(openRecord(text)).toEqual({ ok: false, failure: { code: 'record/unknown-key', path, key } });
});

test.each(['__proto__', 'constructor', 'prototype', 'toString'])(
  'refuses the key %s and changes no prototype',
  (key) => {
    for (const place of ['{', '"vehicle": {', '"position": {']) {
      const text = exampleText().replace(place, `${place} ${JSON.stringify(key)}: {"polluted": true},`);
      expect(openRecord(text)).toMatchObject({ ok: false, failure: { code: 'record/unknown-key', key } });
    }
    expect('polluted' in {}).toBe(false);
  },
);

test.each<[string, (record: Loose) => void, object]>([
  [
    'two captures of one id',
    (r) => Object.assign(r.captures[1], { id: 'c1' }),
    { code: 'record/duplicate-id', path: 'captures[1].id', id: 'c1' },
  ],
  [
    'two wheel ends of one id',
    (r) => Object.assign(r.wheelEnds[2], { id: 'w1' }),
    { code: 'record/duplicate-id', path: 'wheelEnds[2].id', id: 'w1' },
  ],
  [
    'two wheel ends in one place',
    (r) => Object.assign(r.wheelEnds[2].position, { axle: 1, side: 'left' }),
    { code: 'record/position-twice', path: 'wheelEnds[2].position' },
  ],
  [
    'two measurements of one id, on different wheel ends',
    (r) => Object.assign(r.wheelEnds[3].measurements[0], { id: 'a1l-found' }),
    { code: 'record/duplicate-id', path: 'wheelEnds[3].measurements[0].id', id: 'a1l-found' },
  ],
  [
    'two marks of one id, on different views of a measurement',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[1].marks[0], { id: 'm1' }),
    { code: 'record/duplicate-id', path: 'wheelEnds[0].measurements[0].views[1].marks[0].id', id: 'm1' },
  ],
  [
    'two views of one state',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[2], { state: 'applied' }),
    { code: 'record/state-twice', path: 'wheelEnds[0].measurements[0].views[2].state', state: 'applied' },
  ],
  [
    'a view of a capture that it does not hold',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[0], { captureId: 'c99' }),
    {
      code: 'record/capture-missing',
      path: 'wheelEnds[0].measurements[0].views[0].captureId',
      captureId: 'c99',
    },
  ],
  [
    'a view of a clip without a frame',
    (r) => Object.assign(r.wheelEnds[1].measurements[1].views[0], { frame: null }),
    { code: 'record/clip-without-frame', path: 'wheelEnds[1].measurements[1].views[0].frame' },
  ],
  [
    'a view of a photo with a frame',
    (r) => Object.assign(r.wheelEnds[0].measurements[0].views[0], { frame: { index: 0, timeTicks: 0 } }),
    { code: 'record/photo-with-frame', path: 'wheelEnds[0].measurements[0].views[0].frame' },
  ],
  [
    'a frame after the end of the clip',
    (r) => Object.assign(r.wheelEnds[1].measurements[1].views[0].frame, { index: 360 }),
    {
      code: 'record/frame-outside-clip',
      path: 'wheelEnds[1].measurements[1].views[0].frame.index',
      index: 360,
      frameCount: 360,
    },
  ],
  [
    'a mark followed from one that is not there',
    (r) => Object.assign(r.wheelEnds[1].measurements[1].views[1].marks[0], { followedFrom: 'nobody' }),
    { code: 'record/seed-missing', path: 'wheelEnds[1].measurements[1].views[1].marks[0]', id: 'nobody' },
  ],
  [
    'a track with half a place',
    (r) => Object.assign(r.wheelEnds[1].measurements[1], { followed: followed({ yCentiPx: [1, null] }) }),
    { code: 'record/track-uneven', path: 'wheelEnds[1].measurements[1].followed.track.points[0]' },
  ],
  [
    'a track with a column too short',
    (r) => Object.assign(r.wheelEnds[1].measurements[1], { followed: followed({ xCentiPx: [1] }) }),
    { code: 'record/track-uneven', path: 'wheelEnds[1].measurements[1].followed.track.points[0]' },
  ],
  [
    'a clip without its clock',
    (r) => Object.assign(r.captures[5], { clip: null }),
    { code: 'record/clip-without-clock', path: 'captures[5].clip' },
  ],
  [
    'a photo with a clock',
    (r) => Object.assign(r.captures[0], { clip: r.captures[5].clip }),
    { code: 'record/photo-with-clock', path: 'captures[0].clip' },
  ],
])('refuses %s', (_what, spoil, failure) => {
  expect(openRecord(spoilt(spoil))).toEqual({ ok: false, failure });
});

test('a list of a hundred thousand faults is one failure and no crash', () => {
  const view = { marks: Array(500).fill(0) };
  const measurement = { views: [view, view, view] };
  const text = spoilt((r) => {
    for (const wheelEnd of r.wheelEnds) wheelEnd.measurements = Array(100).fill(measurement);
  });
  expect(openRecord(text)).toMatchObject({ ok: false });
});

test('any JSON is a record or a failure with a code, never a crash', () => {
  const head = { format: 'strokewitness-record', version: 1 };
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), fc.boolean(), (value, withHead) => {
      const spread = typeof value === 'object' && value !== null && !Array.isArray(value) ? value : { value };
      const opened = openRecord(JSON.stringify(withHead ? { ...spread, ...head } : value));
      expect(opened.ok).toBe(false);
      if (!opened.ok) expect(opened.failure.code).toMatch(/^record\//);
    }),
  );
});

test('a record with one value replaced by anything is opened or refused, never a crash', () => {
  const text = exampleText();
  const values = [...text.matchAll(/: ("[^"]*"|-?[\d.]+|null|true|false)/g)].map((match) => ({
    at: match.index + 2,
    length: (match[1] ?? '').length,
  }));
  fc.assert(
    fc.property(fc.constantFrom(...values), fc.jsonValue({ maxDepth: 2 }), ({ at, length }, value) => {
      const opened = openRecord(text.slice(0, at) + JSON.stringify(value) + text.slice(at + length));
      if (!opened.ok) expect(opened.failure.code).toMatch(/^record\//);
    }),
    { numRuns: 300 },
  );
});

test('version 1 has no target, pin end, profiles, no tape said to touch the pin, and nothing followed', () => {
  const opened = openRecord(readFileSync('tests/fixtures/records/version-1.json', 'utf8'));
  if (!opened.ok) throw new Error(opened.failure.code);
  expect(opened.value).toMatchObject({ version: 7, cameraProfiles: [] });
  const measurements = opened.value.wheelEnds.flatMap((end) => end.measurements);
  for (const { cameraProfileId, references, followed } of measurements) {
    expect(followed).toBeNull();
    expect(cameraProfileId).toBeNull();
    expect(references).toMatchObject({ target: null, pinEnd: null });
    if (references.tape) expect(references.tape.touchesPin).toBe(false);
  }
});

test('version 5 names no colour of a band, and puts no frame of a clip right', () => {
  const opened = openRecord(readFileSync('tests/fixtures/records/version-5.json', 'utf8'));
  if (!opened.ok) throw new Error(opened.failure.code);
  const marks = opened.value.wheelEnds.flatMap((end) => end.measurements.map((each) => each.overStrokeMark));
  expect(marks.length).toBeGreaterThan(3);
  expect(marks.every(({ bandColour }) => bandColour === null)).toBe(true);
  const text = readFileSync('tests/fixtures/records/version-5.json', 'utf8');
  const older = JSON.parse(text);
  const { corrections: _, ...track } = followed({}).track;
  older.wheelEnds[1].measurements[1].followed = { track, sideViews: [] };
  expect(openRecord(JSON.stringify(older))).toMatchObject({ ok: true });
});

test('version 6 does not say by what the frames of a clip were taken', () => {
  const opened = openRecord(readFileSync('tests/fixtures/records/version-6.json', 'utf8'));
  if (!opened.ok) throw new Error(opened.failure.code);
  const clips = opened.value.captures.flatMap(({ clip }) => clip ?? []);
  expect(clips).toMatchObject([{ frameCount: 360, framesBy: null }]);
});

test('a measurement names a camera that the record lists', () => {
  const text = spoilt((r) => Object.assign(r.wheelEnds[0].measurements[0], { cameraProfileId: 'none' }));
  expect(openRecord(text)).toMatchObject({
    ok: false,
    failure: { code: 'record/profile-missing', cameraProfileId: 'none' },
  });
});
