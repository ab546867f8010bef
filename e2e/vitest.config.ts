import { join } from "node:path";
import { defineConfig } from "vitest/config";
import { longestFirst } from "../scripts/longest-first.ts";

process.env["NODE_COMPILE_CACHE"] ??= join(import.meta.dirname, "../.cache/compiled");

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["**/*.e2e.ts"],
    globalSetup: ["harness/made-once.ts"],
    // a process for each file would load the driver of the browser anew; what a scene opens, it closes
    isolate: false,
    setupFiles: ["harness/leave-a-picture.ts"],
    testTimeout: 240_000,
    hookTimeout: 240_000,
    // four browsers, each with its server: much of a test is waiting, and the two cores of a small machine have room
    maxWorkers: 4,
    sequence: {
      sequencer: longestFirst(
        ["accessible", "killed", "whole-walk", "update", "older-copy", "record", "import"].map(
          (name) => `${name}.e2e.ts`,
        ),
      ),
    },
    passWithNoTests: false,
  },
});
