/** Tries what would help most: several measurements, so apart from the one that follows the hand. */
import { adviceFor } from '../../measurement/advice.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';

addEventListener('message', (event: MessageEvent<MeasureInput>) => {
  postMessage(adviceFor(event.data));
});
