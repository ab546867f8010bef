export type { RateLimit } from "./guard/limits.ts";
export type * from "./protocol.ts";
export { PAGE_EVENTS, PROTOCOL_VERSION } from "./protocol.ts";
export { sift } from "./sift.ts";
export { type RunningServer, type ServerOptions, startServer } from "./start-server.ts";
