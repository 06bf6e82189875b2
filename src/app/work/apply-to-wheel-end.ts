import type { WheelEnd } from '../../record/wheel-end.ts';
import type { WheelEndAction } from './actions.ts';
import { newMeasurement } from './new-record.ts';

export function applyToWheelEnd(
  wheelEnd: WheelEnd,
  action: Exclude<WheelEndAction, { readonly type: 'set-position' }>,
): WheelEnd {
  switch (action.type) {
    case 'set-chamber':
      return { ...wheelEnd, chamber: action.chamber };
    case 'set-wheel-end':
      return { ...wheelEnd, ...action.facts };
    case 'set-identification':
      return { ...wheelEnd, identification: { ...wheelEnd.identification, ...action.identification } };
    case 'answer-check': {
      const { check, answer } = action;
      const others = wheelEnd.causeAnswers.filter((given) => given.check !== check);
      return { ...wheelEnd, causeAnswers: answer === null ? others : [...others, { check, answer }] };
    }
    case 'put-line':
      return {
        ...wheelEnd,
        [action.list]: withLine<{ readonly id: string }>(wheelEnd[action.list], action.line),
      };
    case 'drop-line': {
      const lines: readonly { readonly id: string }[] = wheelEnd[action.list];
      return { ...wheelEnd, [action.list]: lines.filter(({ id }) => id !== action.id) };
    }
    case 'add-measurement': {
      const measurement = newMeasurement(action.id, action.purpose);
      return { ...wheelEnd, measurements: [...wheelEnd.measurements, measurement] };
    }
    case 'drop-measurement':
      return { ...wheelEnd, measurements: wheelEnd.measurements.filter(({ id }) => id !== action.id) };
  }
}

function withLine<T extends { readonly id: string }>(lines: readonly T[], line: T): readonly T[] {
  const known = lines.some(({ id }) => id === line.id);
  return known ? lines.map((each) => (each.id === line.id ? line : each)) : [...lines, line];
}
