export { ASPECTS, type Aspect, type Outcome, type Problem } from "./aspect.ts";
export { type Decoded, decodeReports } from "./decode.ts";
