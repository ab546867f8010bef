import { stored } from "../preferences/stored.ts";

/** Whether someone has said on this device who they are: then the first page is not shown while the storage opens. */
export const known = stored<boolean>("known", (found) => found === true);
