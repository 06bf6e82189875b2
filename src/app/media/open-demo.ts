import { media, notices, work } from '../stores.ts';
import { DEMO_UNREACHABLE } from '../words/en.ts';
import { bringSample } from './bring-sample.ts';
import type { DemoSet } from './demo-sets.ts';
import { startWheelEnd } from './start-wheel-end.ts';
import { takeAnyFiles } from './take-any-files.ts';

/** Brings the sample pictures and begins a wheel end with them, as if they had been chosen by hand. */
export async function openDemo(demo: DemoSet): Promise<void> {
  const files = await media.whileReading(() =>
    Promise.all(demo.files.map((name) => bringSample(`${demo.folder}/${name}`))),
  );
  const arrived = files.filter((file) => file !== null);
  if (arrived.length < files.length) {
    notices.tell('demo', DEMO_UNREACHABLE);
    return;
  }
  notices.clear('demo');
  startWheelEnd(demo.unit);
  work.act({ type: 'set-position', position: demo.position });
  await takeAnyFiles(arrived);
}
