import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["**/*.e2e.ts"],
    setupFiles: ["harness/leave-a-picture.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // two browsers, each with its server: more would starve one another on the two cores of a small machine
    maxWorkers: 2,
    passWithNoTests: false,
  },
});
