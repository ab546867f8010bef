const LOOPBACK = ["127.0.0.1", "localhost", "[::1]"];

/** The names this server answers to, and the pages that may change something through it. */
export interface Names {
  readonly hosts: ReadonlySet<string>;
  readonly origins: ReadonlySet<string>;
}

/**
 * This machine's own names with the port, and those of the origins that were allowed.
 *
 * @param allowedOrigins such as `https://walk.example`: how the outside sees this server
 * @throws {Error} when one is not an origin
 */
export function namesOf(port: number, allowedOrigins: readonly string[]): Names {
  const hosts = new Set<string>();
  const origins = new Set<string>();
  for (const name of LOOPBACK) {
    hosts.add(`${name}:${port}`);
    origins.add(`http://${name}:${port}`);
    // A browser leaves out the port that is usual.
    if (port === 80) {
      hosts.add(name);
      origins.add(`http://${name}`);
    }
  }
  for (const allowed of allowedOrigins) {
    const origin = URL.canParse(allowed) ? new URL(allowed) : null;
    if (origin === null || origin.origin !== allowed || !/^https?:$/.test(origin.protocol)) {
      throw new Error(`Expected an origin such as https://walk.example, without a path, found ${allowed}.`);
    }
    hosts.add(origin.host);
    origins.add(origin.origin);
  }
  return { hosts, origins };
}
