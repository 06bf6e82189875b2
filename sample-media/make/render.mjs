// @ts-check
import { execFile } from 'node:child_process';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { pov } from './camera.mjs';

const run = promisify(execFile);

/**
 * Renders one picture to a 16-bit PPM; `closely` names a part (x0, y0, x1, y1 in pixels) that is sampled more finely, `depth` times halved.
 * @param {string} folder @param {string} name @param {string} sceneText @param {import('./camera.mjs').Lens} lens
 * @param {{ smooth?: string[], closely?: readonly [number, number, number, number], depth?: number }} [options]
 */
export async function render(
  folder,
  name,
  sceneText,
  lens,
  { smooth = ['+A0.3', '+AM2', '+R1'], closely, depth = 3 } = {},
) {
  const scene = join(folder, `${name}.pov`);
  const out = join(folder, `${name}.ppm`);
  await writeFile(scene, sceneText);
  const size = [`+W${lens.widthPx}`, `+H${lens.heightPx}`];
  const draw = (/** @type {string} */ file, /** @type {string[]} */ how) =>
    run(
      'povray',
      [`+I${scene}`, `+O${file}`, '+FP16', 'File_Gamma=srgb', ...size, '-D', '+WT2', '-J', '-GA', ...how],
      {
        maxBuffer: 1 << 26,
      },
    ).catch(explain);
  await draw(out, smooth);
  if (closely) {
    const [x0, y0, x1, y1] = closely;
    const fine = join(folder, `${name}-fine.ppm`);
    await draw(fine, ['+A0.08', '+AM2', `+R${depth}`, `+SC${x0}`, `+EC${x1}`, `+SR${y0}`, `+ER${y1}`]);
    await writeFile(out, withPart(await readFile(out), await readFile(fine), lens, closely));
    await rm(fine);
  }
  return out;
}

/** The rim of the part is left as it was, whatever the counting of its rows. @param {Buffer} whole @param {Buffer} part @param {import('./camera.mjs').Lens} lens @param {readonly [number, number, number, number]} area */
function withPart(whole, part, { widthPx, heightPx }, [x0, y0, x1, y1]) {
  const start = whole.length - widthPx * heightPx * 6;
  for (let y = y0 + 2; y < y1 - 2; y += 1) {
    const from = start + (y * widthPx + x0 + 2) * 6;
    part.copy(whole, from, from, start + (y * widthPx + x1 - 2) * 6);
  }
  return whole;
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
