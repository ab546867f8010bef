import { request } from "node:http";

export interface RawAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly body: string;
}

/** A request whose address and headers go out as they are given; `fetch` would tidy them. */
export function rawRequest(
  url: string,
  path: string,
  options: {
    readonly method?: string;
    readonly headers?: Readonly<Record<string, string>>;
    readonly body?: Uint8Array | string;
  } = {},
): Promise<RawAnswer> {
  const { hostname, port } = new URL(url);
  return new Promise((resolve, reject) => {
    const asked = request(
      {
        hostname,
        port,
        path,
        method: options.method ?? "GET",
        headers: { ...options.headers },
        agent: false,
      },
      (response) => {
        const parts: Buffer[] = [];
        response.on("data", (part: Buffer) => parts.push(part));
        response.on("error", reject);
        response.on("end", () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(parts).toString(),
          }),
        );
      },
    );
    asked.on("error", reject);
    asked.end(options.body);
  });
}
