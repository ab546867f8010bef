/// <reference types="vite/client" />

/** Only read ahead of react-dom, which uses it; nothing here calls it. */
declare module "scheduler";
