export { EXIT } from "./exit-code.ts";
export type { Io } from "./io.ts";
export { run } from "./run.ts";
