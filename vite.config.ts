import { cpSync, createReadStream, existsSync, statSync } from 'node:fs';
import { basename, extname, normalize, resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { splitOpencv } from './.run/vite-opencv.ts';

const MEDIA_FOLDER = 'sample-media';
const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.jpg': 'image/jpeg',
  '.mp4': 'video/mp4',
  '.json': 'application/json',
};

/** The demo's pictures and their truth: served from their folder while developing, copied beside the page when built. */
function sampleMedia(): Plugin {
  const folder = resolve(MEDIA_FOLDER);
  return {
    name: 'sample-media',
    configureServer(server) {
      server.middlewares.use(`/${MEDIA_FOLDER}`, (request, response, next) => {
        const path = resolve(
          folder,
          `.${normalize(decodeURIComponent(request.url ?? '').split('?')[0] ?? '')}`,
        );
        const type = MEDIA_TYPES[extname(path)];
        if (!type || !path.startsWith(folder) || !existsSync(path)) return next();
        response.setHeader('Content-Type', type);
        createReadStream(path).pipe(response);
      });
    },
    writeBundle({ dir }) {
      if (!dir || !existsSync(folder)) return;
      cpSync(folder, resolve(dir, MEDIA_FOLDER), {
        recursive: true,
        filter: (path) =>
          statSync(path).isDirectory() ? basename(path) !== 'make' : extname(path) in MEDIA_TYPES,
      });
    },
  };
}

/** What is handed on as files of their own, beside what the bundler lists in licences.md. */
const LICENCES: Readonly<Record<string, string>> = {
  'licence-opencv.txt': 'node_modules/@opencvjs/web/LICENSE',
  'licence-libheif.txt': 'node_modules/libheif-js/libheif-wasm/LICENSE',
};

function licences(): Plugin {
  return {
    name: 'licences',
    apply: 'build',
    writeBundle({ dir }) {
      if (dir) for (const [name, path] of Object.entries(LICENCES)) cpSync(path, resolve(dir, name));
    },
  };
}

/** Only in the built page: the development server needs scripts in the page itself. */
function contentSecurityPolicy(): Plugin {
  const policy = [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' blob: data:",
    "media-src 'self' blob:",
    "connect-src 'self' blob:",
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
        injectTo: 'head-prepend',
      },
    ],
  };
}

export default defineConfig({
  plugins: [
    react(),
    splitOpencv(),
    sampleMedia(),
    licences(),
    contentSecurityPolicy(),
    VitePWA({
      // An open measurement is never swapped out under a person's hands: the new version waits to be taken.
      registerType: 'prompt',
      injectRegister: null,
      manifest: false,
      workbox: {
        globPatterns: ['**/*.{js,mjs,css,html,svg,png,woff2,webmanifest,wasm}'],
        globIgnores: [`${MEDIA_FOLDER}/**`],
        maximumFileSizeToCacheInBytes: 12_000_000,
        cleanupOutdatedCaches: true,
        navigateFallbackDenylist: [new RegExp(`/${MEDIA_FOLDER}/`)],
      },
    }),
  ],
  build: { target: 'es2022', assetsInlineLimit: 0, license: { fileName: 'licences.md' } },
});
