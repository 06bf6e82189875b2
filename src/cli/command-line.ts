/** npm runs its scripts in the project's folder; a path is meant from where the person stands. */
export const standing = process.env.INIT_CWD ?? process.cwd();

const WRONG_USE = 2;

export function refuse(line: string): never {
  process.stderr.write(`${line.replace(/\s+/g, ' ')}\n`);
  process.exit(WRONG_USE);
}
