/** Calibrates off the page's own thread: some seconds on a phone. */
import type { BoardPicture } from '../../adjustment/board-fit.ts';
import { calibrate } from '../../adjustment/calibrate.ts';

addEventListener('message', (event: MessageEvent<readonly BoardPicture[]>) => {
  postMessage(calibrate(event.data));
});
