/** The thread that looks at a whole picture as it is opened: it needs no OpenCV, and what it does can be ended. */
import { ok } from '../basics/result.ts';
import { grayPicture, rgbaPicture } from './gray-picture.browser.ts';
import { pictureQuality } from './picture-quality.ts';
import { roughGuess } from './rough-guess.ts';
import { type Task, taskSchema } from './task.browser.ts';

postMessage(ok(null));

addEventListener('message', (event: MessageEvent<unknown>) => {
  postMessage(ok(sightOf(taskSchema.parse(event.data))));
});

function sightOf(task: Task) {
  if (task.kind === 'quality') return pictureQuality(rgbaPicture(task.picture), task.question);
  if (task.kind === 'rough-guess') return roughGuess(grayPicture(task.picture));
  throw new Error(`Not a task for first sight: ${task.kind}`);
}
