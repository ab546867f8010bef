import type { Io } from "../io.ts";
import { Refused } from "../refused.ts";

/** A machine of its own for one command: files in memory, what was said, a clock that stands. */
export function memoryIo(
  files: Record<string, string | Uint8Array> = {},
  now_ms = Date.UTC(2026, 10, 12, 8, 0),
  onStop: Io["onStop"] = () => () => {},
) {
  const said: string[] = [];
  const complained: string[] = [];
  const written = new Map<string, Uint8Array>();
  const io: Io = {
    out: (line) => said.push(line),
    err: (line) => complained.push(line),
    async readText(path) {
      const text = files[path];
      if (text === undefined) throw new Refused("unreadable", `${path} could not be read.`);
      return typeof text === "string" ? text : new TextDecoder().decode(text);
    },
    async readBytes(path) {
      const bytes = files[path];
      if (bytes === undefined) throw new Refused("unreadable", `${path} could not be read.`);
      return typeof bytes === "string" ? new TextEncoder().encode(bytes) : new Uint8Array(bytes);
    },
    async namesIn(folder) {
      const inside = Object.keys(files).filter((path) => path.startsWith(`${folder}/`));
      return inside.map((path) => path.slice(folder.length + 1)).filter((name) => !name.includes("/"));
    },
    async makeFolder() {}, // a folder is there as soon as a file is in it
    async writeBytes(path, bytes) {
      const whole =
        bytes instanceof Uint8Array || typeof bytes === "string"
          ? bytes
          : (await Array.fromAsync(bytes)).join("");
      written.set(path, typeof whole === "string" ? new TextEncoder().encode(whole) : whole);
    },
    now_ms: () => now_ms,
    onStop,
    env: {},
  };
  return { io, written, out: () => said.join("\n"), err: () => complained.join("\n") };
}
