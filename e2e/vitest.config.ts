import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["**/*.e2e.ts"],
    setupFiles: ["harness/leave-a-picture.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // three browsers, each with its server: much of a test is waiting, and the two cores of a small machine have room
    maxWorkers: 3,
    passWithNoTests: false,
  },
});
