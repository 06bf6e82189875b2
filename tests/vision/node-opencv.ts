/** The library of the page, as its twin for Node: the same version, the same figures. */
import { loadOpenCV } from '@opencvjs/node';
import { asOpencv, type Opencv } from '../../src/vision/opencv.ts';

export async function nodeOpencv(): Promise<Opencv> {
  const started = asOpencv(await loadOpenCV());
  if (!started.ok) throw new Error(JSON.stringify(started.failure));
  return started.value;
}
