import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["**/*.e2e.ts"],
    setupFiles: ["harness/leave-a-picture.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // one browser and one server at a time: the machine of the tests has two cores
    fileParallelism: false,
    passWithNoTests: false,
  },
});
