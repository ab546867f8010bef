import { defineConfig } from "vitest/config";
import { longestFirst } from "../scripts/longest-first.ts";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["**/*.e2e.ts"],
    setupFiles: ["harness/leave-a-picture.ts"],
    testTimeout: 240_000,
    hookTimeout: 240_000,
    // four browsers, each with its server: much of a test is waiting, and the two cores of a small machine have room
    maxWorkers: 4,
    sequence: {
      sequencer: longestFirst(
        ["accessible", "killed", "whole-walk", "update", "record", "import"].map((name) => `${name}.e2e.ts`),
      ),
    },
    passWithNoTests: false,
  },
});
