import { config } from "zod/mini";

// The page's policy forbids code made of text. The schemas would try it and take no for an answer, but the browser
// would tell of it as a breach; so they are told not to try. Imported before anything that makes a schema.
config({ jitless: true });
