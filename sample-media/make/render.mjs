// @ts-check
import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { pov } from './camera.mjs';

const run = promisify(execFile);

/** Renders one picture to a 16-bit PPM. @param {string} folder @param {string} name @param {string} sceneText @param {import('./camera.mjs').Lens} lens @param {{ scale?: number, threads?: number, smooth?: string[] }} [options] */
export async function render(
  folder,
  name,
  sceneText,
  lens,
  { scale = 1, threads = 2, smooth = ['+A0.3', '+AM2', '+R1', '-J'] } = {},
) {
  const scene = join(folder, `${name}.pov`);
  const out = join(folder, `${name}.ppm`);
  await writeFile(scene, sceneText);
  await run(
    'povray',
    [
      `+I${scene}`,
      `+O${out}`,
      '+FP16',
      'File_Gamma=srgb',
      `+W${Math.round(lens.widthPx * scale)}`,
      `+H${Math.round(lens.heightPx * scale)}`,
      '-D',
      `+WT${threads}`,
      ...smooth,
      '-GA',
    ],
    { maxBuffer: 1 << 26 },
  ).catch(explain);
  return out;
}

/**
 * How far along its line of sight each point is, and what the line of sight hits first (mm). Not hit: -1.
 * @param {string} folder @param {string} name @param {{ declarations: string, solids: readonly string[] }} scene @param {import('./vectors.mjs').Vec3} eye @param {readonly import('./vectors.mjs').Vec3[]} points
 * @returns {Promise<{ pointMm: number, hitMm: number }[]>}
 */
export async function sightLines(folder, name, { declarations, solids }, eye, points) {
  const file = join(folder, `${name}-sight.pov`);
  const out = join(folder, `${name}-sight.txt`);
  const lines = points.map((p) => `Sight(${pov(p)})`).join('\n');
  await writeFile(
    file,
    `#version 3.7; global_settings { assumed_gamma 1.0 }
${declarations}
#declare World = union { ${solids.join('\n')} }
#declare Eye = ${pov(eye)};
#fopen Out "${out}" write
#macro Sight(P)
  #local Hit = trace(World, Eye, P - Eye);
  #write (Out, str(vlength(P - Eye), 0, 4), " ", str(vlength(Hit - Eye), 0, 4), "\\n")
#end
${lines}
#fclose Out
camera { location Eye }`,
  );
  await run('povray', [`+I${file}`, '-F', '+W4', '+H4', '-D', '-GA', '+WT1'], { maxBuffer: 1 << 26 }).catch(
    explain,
  );
  return (await readFile(out, 'utf8'))
    .trim()
    .split('\n')
    .map((line) => {
      const [pointMm = 0, hitMm = 0] = line.split(' ').map(Number);
      return { pointMm, hitMm };
    });
}

/** @param {{ stderr?: string, message: string }} error @returns {never} */
function explain(error) {
  throw new Error(
    `POV-Ray failed: ${(error.stderr ?? error.message)
      .split('\n')
      .filter((l) => /error|fatal|line/i.test(l))
      .join('\n')}`,
  );
}
