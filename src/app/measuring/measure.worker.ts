/** Measures off the page's own thread, so that a mark follows the hand however long the adjustment takes. */
import { measure } from '../../measurement/measure.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';

addEventListener('message', (event: MessageEvent<MeasureInput>) => {
  postMessage(measure(event.data));
});
