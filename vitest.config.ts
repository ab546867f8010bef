import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["packages/*/src/**/*.test.{ts,tsx}", "reference/**/*.test.ts", "scripts/**/*.test.ts"],
    setupFiles: ["scripts/same-draws.ts"],
    environment: "node",
    // a worker for each file costs more than half of the run; what a test changes of its surroundings, it puts back
    isolate: false,
    testTimeout: 60_000,
    passWithNoTests: false,
  },
});
