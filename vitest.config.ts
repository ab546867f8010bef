import { availableParallelism } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";
import { longestFirst } from "./scripts/longest-first.ts";

// what a test starts, a program or a thread of its own, finds its sources as the one before has compiled them
process.env["NODE_COMPILE_CACHE"] ??= join(import.meta.dirname, ".cache/compiled");

export default defineConfig({
  test: {
    include: ["packages/*/src/**/*.test.{ts,tsx}", "reference/**/*.test.ts", "scripts/**/*.test.ts"],
    setupFiles: ["scripts/same-draws.ts"],
    environment: "node",
    // a worker for each file costs more than half of the run; what a test changes of its surroundings, it puts back
    isolate: false,
    // one more than the two cores of a small machine: a server that is killed again and again mostly waits
    maxWorkers: Math.max(3, availableParallelism() - 1),
    sequence: {
      sequencer: longestFirst([
        "server-on-postgres.test.ts",
        "server-on-sqlite.test.ts",
        "fit.test.ts",
        "sheet-figures.test.ts",
      ]),
    },
    testTimeout: 40_000,
    hookTimeout: 40_000,
    passWithNoTests: false,
  },
});
