/**
 * The page's way to OpenCV and to the assists: a worker of each that starts with the first request. A request that its signal or a newer request ends
 * rejects with an AbortError; if OpenCV was at work on it the worker ends too, and the next request starts another.
 */
import type { z } from 'zod';
import { fail, ok, type Result } from '../basics/result.ts';
import { answerSchema, startedSchema } from './answer.ts';
import {
  type AssistFailure,
  type AssistQuestion,
  type AssistSight,
  assistFailureSchema,
  assistSightSchema,
} from './assist-sight.ts';
import { endedBy } from './ended-by.browser.ts';
import {
  type GuessFailure,
  type GuessQuestion,
  type GuessSight,
  guessFailureSchema,
  guessSightSchema,
} from './guess-sight.ts';
import { type PictureQuality, pictureQualitySchema, type QualityQuestion } from './picture-quality.ts';
import { type RoughGuess, roughGuessSchema } from './rough-sight.ts';
import { type BoardPlan, type SeenBoard, seenBoardSchema } from './seen-board.ts';
import { type CardMarker, type TargetSight, targetSightSchema } from './target-sight.ts';
import type { Task } from './task.browser.ts';
import {
  type TieFailure,
  type TieQuestion,
  type TieSight,
  tieFailureSchema,
  tieSightSchema,
} from './tie-sight.ts';
import { type VisionFailure, visionFailureSchema } from './vision-failure.ts';

const LIMITS = {
  /** 0.5 s on a desktop from its own disk; 2.3 MB over a weak network in a yard need a minute. */
  startS: 90,
  /** 5 s for a photo of 12 megapixels of gravel on a busy desktop; a phone may need ten times that. */
  taskS: 60,
};

export type VisionClient = {
  /** The picture is handed over: it is gone for the caller, whatever comes of it. */
  readonly findTarget: (
    picture: ImageBitmap,
    card: readonly CardMarker[],
    signal: AbortSignal,
  ) => Promise<Result<TargetSight, VisionFailure>>;
  readonly findBoard: (
    picture: ImageBitmap,
    plan: BoardPlan,
    signal: AbortSignal,
  ) => Promise<Result<SeenBoard, VisionFailure>>;
  readonly findTies: (
    first: ImageBitmap,
    second: ImageBitmap,
    question: TieQuestion,
    signal: AbortSignal,
  ) => Promise<Result<TieSight, TieFailure>>;
  /** known: the picture that has the marks. */
  readonly guess: (
    picture: ImageBitmap,
    known: ImageBitmap,
    question: GuessQuestion,
    signal: AbortSignal,
  ) => Promise<Result<GuessSight, GuessFailure>>;
  /** second: the other picture, where the question is about both. */
  readonly assist: (
    picture: ImageBitmap,
    second: ImageBitmap | null,
    question: AssistQuestion,
    signal: AbortSignal,
  ) => Promise<Result<AssistSight, AssistFailure>>;
  /** Of a picture in which nothing is marked. */
  readonly roughGuess: (
    picture: ImageBitmap,
    signal: AbortSignal,
  ) => Promise<Result<RoughGuess, VisionFailure>>;
  readonly quality: (
    picture: ImageBitmap,
    question: QualityQuestion,
    signal: AbortSignal,
  ) => Promise<Result<PictureQuality, VisionFailure>>;
};

type Engine = { readonly worker: Worker; readonly started: Promise<Result<null, VisionFailure>> };

export function visionClient(startWorker: () => Worker, limits = LIMITS): VisionClient {
  let engine: Engine | null = null;
  let newest: AbortController | null = null;
  let atWork: Worker | null = null;

  function end(worker: Worker): void {
    worker.terminate();
    if (engine?.worker === worker) engine = null;
    if (atWork === worker) atWork = null;
  }

  function startEngine(): Engine {
    const worker = startWorker();
    return { worker, started: nextMessage(worker).then((said) => startedSchema.parse(said)) };
  }

  async function startedWorker(signals: readonly AbortSignal[]): Promise<Result<Worker, VisionFailure>> {
    engine ??= startEngine();
    const { worker, started } = engine;
    try {
      const start = await within(limits.startS, started, signals);
      if (start?.ok) return ok(worker);
      end(worker);
      return start ?? fail({ code: 'vision/not-started', limitS: limits.startS });
    } catch (thrown) {
      // A request that is no longer wanted leaves the worker to start for the next one.
      if (!signals.some(({ aborted }) => aborted)) end(worker);
      throw thrown;
    }
  }

  async function ask<T, F extends { readonly code: string }>(
    task: Task,
    answers: z.ZodType<Result<T, F>>,
    signal: AbortSignal,
  ): Promise<Result<T, F | VisionFailure>> {
    newest?.abort();
    newest = new AbortController();
    if (atWork) end(atWork);
    const signals = [signal, newest.signal];
    const start = await startedWorker(signals);
    if (!start.ok) return start;
    const worker = start.value;
    atWork = worker;
    try {
      const answer = nextMessage(worker);
      worker.postMessage(task, picturesOf(task));
      const said = await within(limits.taskS, answer, signals);
      if (said === null) return fail({ code: 'vision/stalled', limitS: limits.taskS });
      const result = answers.parse(said);
      if (result.ok) atWork = null;
      return result;
    } finally {
      // Unless it answered well, it may be at work still, or short of memory.
      if (atWork === worker) end(worker);
    }
  }

  const askAndClose: typeof ask = (task, answers, signal) =>
    ask(task, answers, signal).finally(() => {
      for (const picture of picturesOf(task)) picture.close();
    });

  return {
    findTarget: (picture, card, signal) =>
      askAndClose(
        { kind: 'find-target', picture, card },
        answerSchema(targetSightSchema, visionFailureSchema),
        signal,
      ),
    findBoard: (picture, plan, signal) =>
      askAndClose(
        { kind: 'find-board', picture, plan },
        answerSchema(seenBoardSchema, visionFailureSchema),
        signal,
      ),
    findTies: (first, second, question, signal) =>
      askAndClose(
        { kind: 'find-ties', picture: first, second, question },
        answerSchema(tieSightSchema, tieFailureSchema),
        signal,
      ),
    guess: (picture, known, question, signal) =>
      askAndClose(
        { kind: 'guess', picture, second: known, question },
        answerSchema(guessSightSchema, guessFailureSchema),
        signal,
      ),
    assist: (picture, second, question, signal) =>
      askAndClose(
        { kind: 'assist', picture, second, question },
        answerSchema(assistSightSchema, assistFailureSchema),
        signal,
      ),
    roughGuess: (picture, signal) =>
      askAndClose(
        { kind: 'rough-guess', picture },
        answerSchema(roughGuessSchema, visionFailureSchema),
        signal,
      ),
    quality: (picture, question, signal) =>
      askAndClose(
        { kind: 'quality', picture, question },
        answerSchema(pictureQualitySchema, visionFailureSchema),
        signal,
      ),
  };
}

function picturesOf(task: Task): ImageBitmap[] {
  return 'second' in task && task.second ? [task.picture, task.second] : [task.picture];
}

function nextMessage(worker: Worker): Promise<unknown> {
  return new Promise((resolve, reject) => {
    worker.addEventListener('message', (event: MessageEvent<unknown>) => resolve(event.data), { once: true });
    worker.addEventListener('error', (event) => reject(new Error(`Vision worker: ${event.message}`)), {
      once: true,
    });
  });
}

/** Null: the time is over. */
async function within<T>(
  limitS: number,
  work: Promise<T>,
  signals: readonly AbortSignal[],
): Promise<T | null> {
  const time = AbortSignal.timeout(limitS * 1000);
  try {
    return await endedBy(work, [...signals, time]);
  } catch (thrown) {
    if (thrown === time.reason) return null;
    throw thrown;
  }
}
