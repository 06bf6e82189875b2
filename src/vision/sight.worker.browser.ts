/** The thread that looks at a whole picture as it is opened: it needs no OpenCV, and what it does can be ended. */
import { ok } from '../basics/result.ts';
import { rgbaPicture } from './gray-picture.browser.ts';
import { pictureQuality } from './picture-quality.ts';
import { taskSchema } from './task.browser.ts';

postMessage(ok(null));

addEventListener('message', (event: MessageEvent<unknown>) => {
  const task = taskSchema.parse(event.data);
  if (task.kind !== 'quality') throw new Error(`Not a task for first sight: ${task.kind}`);
  postMessage(ok(pictureQuality(rgbaPicture(task.picture), task.question)));
});
