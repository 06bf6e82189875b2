/** OpenCV's thread: one task at a time. The page ends it when a task takes too long or is no longer wanted. */
import { ok, type Result } from '../basics/result.ts';
import { findBoard } from './find-board.ts';
import { findTarget } from './find-target.ts';
import { findTies } from './find-ties.ts';
import { grayPicture } from './gray-picture.browser.ts';
import { guessMarks } from './guess-marks.ts';
import type { GuessFailure, GuessSight } from './guess-sight.ts';
import type { SeenBoard } from './seen-board.ts';
import { startOpencv } from './start-opencv.browser.ts';
import type { TargetSight } from './target-sight.ts';
import { type Task, taskSchema } from './task.browser.ts';
import type { TieFailure, TieSight } from './tie-sight.ts';

// Passed on in its result: OpenCV's own object would be waited for without end if it were the promise's value.
const starting = startOpencv();
void starting.then((started) => postMessage(started.ok ? ok(null) : started));

addEventListener('message', async (event: MessageEvent<unknown>) => {
  postMessage(await answer(taskSchema.parse(event.data)));
});

type Sight = TargetSight | SeenBoard | TieSight | GuessSight;

async function answer(task: Task): Promise<Result<Sight, TieFailure | GuessFailure>> {
  const started = await starting;
  if (!started.ok) return started;
  const gray = grayPicture(task.picture);
  switch (task.kind) {
    case 'find-target':
      return findTarget(started.value, gray, task.card);
    case 'find-board':
      return findBoard(started.value, gray, task.plan);
    case 'find-ties':
      return findTies(started.value, gray, grayPicture(task.second), task.question);
    case 'guess':
      return guessMarks(started.value, grayPicture(task.second), gray, task.question);
    case 'assist':
    case 'quality':
    case 'rough-guess':
      throw new Error(`Not a task for OpenCV: ${task.kind}`);
  }
}
