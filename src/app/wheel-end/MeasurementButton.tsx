import type { Capture } from '../../captures/capture.ts';
import type { View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import { work } from '../stores.ts';
import { STATE_NAMES } from '../words/en.ts';
import { WHEEL_END } from '../words/wheel-end.ts';
import { ViewPicture } from './ViewPicture.tsx';

type Props = {
  readonly wheelEndId: string;
  readonly measurement: MeasurementInput;
  readonly captures: readonly Capture[];
  readonly number: number;
  readonly main: boolean;
};

/** The way into a measurement is its pictures. */
export function MeasurementButton({ wheelEndId, measurement, captures, number, main }: Props) {
  const { id, views } = measurement;
  const seen = views.flatMap((view) => {
    const capture = captures.find((each) => each.id === view.captureId);
    return capture ? [{ view, capture }] : [];
  });
  return (
    <button
      type="button"
      className={main ? 'button main wide' : 'button wide measurement-button'}
      onClick={() => work.turnTo({ wheelEndId, measurementId: id })}
    >
      {seen.length > 0 && !main ? (
        <span className="view-pictures">
          {seen.map(({ view, capture }) => (
            <PictureOf key={view.state} view={view} capture={capture} />
          ))}
        </span>
      ) : null}
      {views.length === 0 ? WHEEL_END.measure : WHEEL_END.measured(number)}
    </button>
  );
}

function PictureOf({ view, capture }: { readonly view: View; readonly capture: Capture }) {
  return (
    <span className="view-picture">
      <ViewPicture view={view} capture={capture} />
      <span className="quiet">{STATE_NAMES[view.state]}</span>
    </span>
  );
}
