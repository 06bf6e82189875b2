/** One share of the robustness study: scenes by kind and seed, sound or spoiled, to their outcomes. */
import { parentPort, workerData } from 'node:worker_threads';
import { drawFrom } from '../../src/basics/random.ts';
import { anyScene } from '../simulation/any-scene.ts';
import type { ReferenceKind } from '../simulation/scene.ts';
import { type MistakeName, spoiled } from '../simulation/spoiled-scene.ts';
import { LIMIT_MM, outcomeOf, type SceneOutcome } from './scene-outcome.ts';

export type Task = {
  readonly kind: ReferenceKind;
  readonly seed: number;
  /** null: as it is, any stroke; else a stroke over the limit. */
  readonly mistake: MistakeName | null;
};

export type Done = Task &
  SceneOutcome & {
    readonly strokeMm: number;
    readonly focalKnown: boolean;
    readonly cameraStill: boolean;
    readonly focalOverLonger: number;
    readonly seconds: number;
  };

/** Strokes of the spoiled scenes: from just over the limit to the end of a usual long stroke. */
const OVER_MM = [1, 20] as const;

export function runTask(task: Task): Done | null {
  const { kind, seed, mistake } = task;
  const over = drawFrom(seed).uniform(LIMIT_MM + OVER_MM[0], LIMIT_MM + OVER_MM[1]);
  const scene = anyScene(kind, seed, mistake ? { strokeMm: over } : {});
  const input = mistake ? spoiled(scene, mistake, seed) : scene.input;
  if (!input) return null;
  const begin = performance.now();
  const outcome = outcomeOf(input, scene.truth.strokeMm);
  return {
    ...task,
    ...outcome,
    strokeMm: scene.truth.strokeMm,
    focalKnown: scene.options.focalKnown === true,
    cameraStill: scene.options.cameraStill === true,
    focalOverLonger: scene.options.focalOverWidth?.[0] ?? Number.NaN,
    seconds: (performance.now() - begin) / 1000,
  };
}

if (parentPort) {
  const { tasks } = workerData as { readonly tasks: readonly Task[] };
  for (const task of tasks) parentPort.postMessage(runTask(task));
}
