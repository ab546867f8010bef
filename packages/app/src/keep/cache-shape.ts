declare const __CACHE_SHAPE__: string | undefined;

/** The stamp of the code that decides how cached books and states look (see vite.config.ts). */
export const CACHE_SHAPE = typeof __CACHE_SHAPE__ === "undefined" ? "unbuilt" : __CACHE_SHAPE__;
