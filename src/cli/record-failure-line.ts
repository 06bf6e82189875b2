import type { Problem, RecordFailure } from '../record/record-failure.ts';

/** What is wrong with a record file, in one line for a person at a command line. */
export function recordFailureLine(failure: RecordFailure): string {
  switch (failure.code) {
    case 'record/too-large':
      return `too large to be a record: ${failure.characters} characters, at most ${failure.limit}`;
    case 'record/too-deep':
      return `nested more than ${failure.limit} deep: no record is`;
    case 'record/not-json':
      return 'not JSON';
    case 'record/other-format':
      return 'JSON, but not a Strokewitness record';
    case 'record/unknown-version':
      return 'a record without a version that this program knows';
    case 'record/newer-version':
      return `a record of version ${failure.version}; this program reads up to version ${failure.newest}: update it`;
    case 'record/invalid':
      return `${placeText(failure.path)} ${PROBLEMS[failure.problem]}`;
    case 'record/unknown-key':
      return `${placeText(failure.path)} has a key that the format does not know: ${JSON.stringify(failure.key)}`;
    case 'record/too-many-faults':
      return 'so many faults that it cannot be a record';
    case 'record/duplicate-id':
      return `${failure.path} repeats the id ${JSON.stringify(failure.id)}`;
    case 'record/position-twice':
      return `${failure.path} is a position that another wheel end has already`;
    case 'record/state-twice':
      return `${failure.path} is a second view of the state ${failure.state}`;
    case 'record/capture-missing':
      return `${failure.path} names a capture that the record does not hold: ${JSON.stringify(failure.captureId)}`;
    case 'record/axle-missing':
      return `${failure.path} is ${failure.axle}, an axle that the vehicle does not have`;
    case 'record/profile-missing':
      return `${failure.path} names a camera profile that the record does not hold: ${JSON.stringify(failure.cameraProfileId)}`;
    case 'record/seed-missing':
      return `${failure.path} was followed from a mark that the measurement does not hold: ${JSON.stringify(failure.id)}`;
    case 'record/track-uneven':
      return `${failure.path} does not give one place, or one gap, to each frame of its track`;
    case 'record/clip-without-clock':
      return `${failure.path} is missing: the capture is a clip`;
    case 'record/photo-with-clock':
      return `${failure.path} must be null: the capture is a photo`;
    case 'record/clip-without-frame':
      return `${failure.path} is missing: the view is of a clip`;
    case 'record/photo-with-frame':
      return `${failure.path} must be null: the view is of a photo`;
    case 'record/frame-outside-clip':
      return `${failure.path} is ${failure.index}, but the clip has ${failure.frameCount} frames`;
  }
}

const PROBLEMS: Readonly<Record<Problem, string>> = {
  missing: 'is missing',
  'wrong-kind': 'is of the wrong kind',
  'too-small': 'is too small or too short',
  'too-large': 'is too large or too long',
  'not-one-of': 'is none of the values that the format allows',
  'wrong-form': 'is not written in the form that the format asks for',
};

function placeText(path: string): string {
  return path === '' ? 'the document' : path;
}
