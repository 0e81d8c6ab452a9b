import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const src = fileURLToPath(new URL('src/', import.meta.url));

export default defineConfig({
  resolve: {
    // The working tree imports itself by its public names, without a build.
    alias: [
      { find: /^coldside$/, replacement: `${src}index.ts` },
      { find: /^coldside\/(.+)$/, replacement: `${src}$1/index.ts` },
    ],
  },
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/support/seed.ts'],
    testTimeout: 60_000,
    coverage: { provider: 'v8', include: ['src/**/*.ts'] },
  },
});
