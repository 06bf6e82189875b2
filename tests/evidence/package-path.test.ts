import { expect, test } from 'vitest';
import { capturePath, isPackagePath, stillPath } from '../../src/evidence/package-path.ts';

test.each([
  ['IMG_4711.JPG', 'captures/003-img-4711.jpg'],
  ['../../etc/passwd', 'captures/003-photo.etcpa'],
  ['..\\..\\start.exe', 'captures/003-start.exe'],
  ['Ворота.heic', 'captures/003-photo.heic'],
  ['x'.repeat(255), `captures/003-${'x'.repeat(40)}.bin`],
  ['a.b/c', 'captures/003-a.bc'],
  ['.', 'captures/003-photo.bin'],
  ['clip.mp4\u0000.sh', 'captures/003-clip-mp4.sh'],
])('a file called %j is %s in the package', (fileName, path) => {
  expect(capturePath(2, { fileName, kind: 'photo' })).toBe(path);
  expect(isPackagePath(path)).toBe(true);
});

test('a still is named by what it shows', () => {
  expect(stillPath('Axle 2 left / applied')).toBe('stills/axle-2-left-applied.jpg');
});

test.each([
  '../manifest.json',
  '/record.json',
  'captures/../record.json',
  'captures/a/b.jpg',
  'captures\\a.jpg',
  'captures/.jpg',
  'captures/a.jpg/',
  'captures/A.jpg',
  'stills/a.jpg\n',
  'c:/a.jpg',
  'captures/a.jpg:x.y',
  '',
])('%j is no path of a package', (path) => expect(isPackagePath(path)).toBe(false));
