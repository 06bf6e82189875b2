/** The thread of the assists. It needs no OpenCV: it starts at once, and no search that is under way ends for it. */
import { ok } from '../basics/result.ts';
import { assist } from './assist.ts';
import { grayPicture } from './gray-picture.browser.ts';
import { taskSchema } from './task.browser.ts';

postMessage(ok(null));

addEventListener('message', (event: MessageEvent<unknown>) => {
  const task = taskSchema.parse(event.data);
  if (task.kind !== 'assist') throw new Error(`Not a task for the assists: ${task.kind}`);
  postMessage(assist(grayPicture(task.picture), task.question, task.second && grayPicture(task.second)));
});
