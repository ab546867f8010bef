// The server as a program. What it loads is kept compiled between runs, which halves the time of a start; so it is
// loaded only after that is switched on.
import { enableCompileCache } from "node:module";

enableCompileCache();
await import("./run.ts");
