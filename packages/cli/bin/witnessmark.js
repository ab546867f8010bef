#!/usr/bin/env node
// Runs the command line on the Node that the project runs on, also where the machine's own is older.
import { onWantedNode } from "../../../scripts/runtime.js";

await onWantedNode(import.meta.url);
await import("../src/witnessmark.ts");
