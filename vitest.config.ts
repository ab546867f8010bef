import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["packages/*/src/**/*.test.{ts,tsx}", "reference/**/*.test.ts", "scripts/**/*.test.ts"],
    setupFiles: ["scripts/same-draws.ts"],
    environment: "node",
    // a worker for each file costs more than half of the run; what a test changes of its surroundings, it puts back
    isolate: false,
    // two workers on the two cores of a small machine: without this, one core would stand idle
    maxWorkers: Math.max(2, availableParallelism() - 1),
    testTimeout: 20_000,
    passWithNoTests: false,
  },
});
