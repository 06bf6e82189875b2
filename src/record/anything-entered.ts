import type { WheelEnd } from './wheel-end.ts';

/** A measurement without pictures is only a place for one. */
export function isAnythingEntered(wheelEnd: WheelEnd): boolean {
  const { chamber, identification, adjuster, adjusterCheck, notes } = wheelEnd;
  const { measurements, handReadings, otherReadings, causeAnswers, repairs, photos } = wheelEnd;
  const lists = [
    measurements.flatMap(({ views }) => views),
    handReadings,
    otherReadings,
    causeAnswers,
    repairs,
    photos,
  ];
  const { portBoss, tag, marking, brake, captureId } = identification;
  return (
    [chamber, adjuster, adjusterCheck, portBoss, tag, brake, captureId].some((one) => one !== null) ||
    lists.some((list) => list.length > 0) ||
    [notes, marking].some((text) => text.trim() !== '')
  );
}
