/** Most bytes of a push, and of the text in one page of a pull. */
export const EVENTS_MOST_B = 2 * 1024 * 1024;
/** Most bytes of a picture. */
export const PHOTO_MOST_B = 8 * 1024 * 1024;

export interface RateLimit {
  /** Requests that a client may make at once. */
  readonly burst: number;
  /** Requests per second that it may make for ever. */
  readonly perSecond: number;
}

/** A phone that comes back after a season sends some hundreds of pushes and pictures in one go. */
export const GENEROUS: RateLimit = { burst: 2_000, perSecond: 50 };

/** Live connections: of one client (some tabs each on some phones behind one address), and of all. */
export const LIVE_PER_CLIENT = 60;
export const LIVE_IN_ALL = 2_000;
