import { uuidv7 } from "uuidv7";

/** A new UUIDv7: sorts by when it was made. */
export const newId = (): string => uuidv7();
