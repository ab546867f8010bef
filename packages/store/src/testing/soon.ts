/** How long a test waits for a condition before it fails: far longer than it takes, for a machine that is busy. */
export const SOON = { timeout: 30_000 };
