declare global {
  /** Where zod looks for its settings before it makes any of its own (zod/v4/core/core.js). */
  var __zod_globalConfig: { jitless?: boolean } | undefined;
}

// The page's policy forbids code made of text. The schemas would try it and take no for an answer, but the browser
// would tell of it as a breach; so they are told not to try. Said here before zod itself is loaded, which the first
// page does not wait for. Imported before anything that makes a schema.
globalThis.__zod_globalConfig ??= {};
globalThis.__zod_globalConfig.jitless = true;

export {};
