// `npm start`: brings the runtime, installs, builds, makes the database with the demo in it, and serves on this machine only.
import { ensureInstalled, onWantedNode } from "./runtime.js";

await onWantedNode(import.meta.url);
ensureInstalled();
const { ensureAppBuilt } = await import("./build-app.js"); // needs a newer Node than what runs before
ensureAppBuilt();
await import("../packages/server/src/main.ts");
