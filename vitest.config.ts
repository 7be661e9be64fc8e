import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from './scripts/browser.mjs';

const browser = await findBrowser();

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/{unit,outside,house}/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // The rooms keep no state of their own: loading them once for many files halves the time.
          isolate: false,
        },
      },
      {
        // Whole journeys: a production build served on loopback, driven by playwright from Node.
        test: {
          name: 'journeys',
          environment: 'node',
          include: ['tests/journeys/**/*.test.ts'],
          globalSetup: 'tests/journeys/build.ts',
          testTimeout: 90_000,
          hookTimeout: 120_000,
          // Two at a time, after the others: one journey keeps about one processor busy.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: './vite.config.ts',
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 30_000,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: { ...browser, args: browserArgs } }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
