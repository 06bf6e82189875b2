/** The pages that show one part of the app alone, and the ports on which the tests find them and the app. */
export const APP_PORT = Number(process.env.TEST_PORT ?? 4319);
export const PARTS_PORT = APP_PORT + 1000;

export const partPage = (name: 'viewer' | 'curve') =>
  `http://127.0.0.1:${PARTS_PORT}/harness-${name}/index.html`;
