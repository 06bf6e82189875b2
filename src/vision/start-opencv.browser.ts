/// <reference types="vite/client" />
/** Starts OpenCV in a worker: the WebAssembly is compiled while it comes in. */
import { fail, type Result } from '../basics/result.ts';
import { startScript } from './generated/opencv.js';
import wasmUrl from './generated/opencv.wasm?url';
import { asOpencv, type Opencv } from './opencv.ts';
import type { VisionFailure } from './vision-failure.ts';

/** May never answer: whoever waits for it sets a time. */
export async function startOpencv(): Promise<Result<Opencv, VisionFailure>> {
  if (!mayMakeFunctions()) return fail({ code: 'vision/forbidden' });
  const compiled = await compile();
  if (!compiled) return fail({ code: 'vision/not-loaded' });
  const started = await startScript({
    instantiateWasm(imports, done) {
      void WebAssembly.instantiate(compiled, imports).then((instance) => done(instance, compiled));
      return {};
    },
  });
  return asOpencv(started);
}

async function compile(): Promise<WebAssembly.Module | null> {
  try {
    return await WebAssembly.compileStreaming(fetch(wasmUrl));
  } catch {
    return null;
  }
}

/** OpenCV's script does, and where the policy forbids it, waits for ever without a word. */
function mayMakeFunctions(): boolean {
  try {
    new Function('');
    return true;
  } catch {
    return false;
  }
}
