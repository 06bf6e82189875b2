// npm start: sets up what is missing, builds, serves the app with the demo and prints its address.
import { root, run, setUpPackages } from './setup.mjs';

setUpPackages();
if (run('npx', ['vite', 'build', '--logLevel', 'warn']) !== 0) process.exit(1);

const { preview } = await import('vite');
const server = await preview({
  root,
  preview: { port: Number(process.env.PORT ?? 4310), host: process.env.HOST ?? 'localhost' },
});
console.log(`Strokewitness is served at ${server.resolvedUrls.local[0]}  (Ctrl+C ends it)`);
