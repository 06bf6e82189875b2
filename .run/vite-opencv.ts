/**
 * OpenCV comes as one script of 11 MB with its WebAssembly inside as text. It is split, once for each version, into the
 * WebAssembly itself, which the browser compiles while it comes in and the service worker keeps, and a script of 0.13 MB.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Plugin } from 'vite';

const PACKAGE = 'node_modules/@opencvjs/web';
const FOLDER = 'src/vision/generated';
/** The data address of a WebAssembly module: 'AGFzbQ' is how its first four bytes, zero and 'asm', begin in base64. */
const INLINED = /data:application\/octet-stream;base64,(AGFzbQ[A-Za-z0-9+/]+=*)/;
const WASM_NAME = 'opencv.wasm';
const EXPORT = 'export default cv';

export function splitOpencv(): Plugin {
  return { name: 'split-opencv', config: splitOnce };
}

function splitOnce(): void {
  const { version } = JSON.parse(readFileSync(resolve(PACKAGE, 'package.json'), 'utf8'));
  const versionFile = resolve(FOLDER, 'version.txt');
  if (existsSync(versionFile) && readFileSync(versionFile, 'utf8') === version) return;

  const script = readFileSync(resolve(PACKAGE, 'lib/opencv_js.js'), 'utf8');
  const base64 = INLINED.exec(script)?.[1];
  if (!base64 || !script.includes(EXPORT))
    throw new Error(`${PACKAGE} ${version} is not laid out as it was: it cannot be split`);
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(resolve(FOLDER, WASM_NAME), Buffer.from(base64, 'base64'));
  writeFileSync(
    resolve(FOLDER, 'opencv.js'),
    script.replace(INLINED, WASM_NAME).replace(EXPORT, 'export { cv as startScript }'),
  );
  // Last, so that a split that was broken off is done again.
  writeFileSync(versionFile, version);
}
