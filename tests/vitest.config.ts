import { defineConfig } from 'vitest/config';

// A zone with a half-hour offset and daylight saving: code that leans on the machine's zone fails here.
process.env.TZ = 'America/St_Johns';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
