import { askWorker, type Failure } from "../ask-worker.ts";
import { OutOfReach, Refused, type Server } from "./server.ts";
import type { ServerCall } from "./server-worker.ts";

/**
 * The page's own server, spoken to away from the screen: to read a page of a ledger and hold it against its hashes
 * takes a slow phone a second, in which a finger would wait.
 */
export function serverInWorker(): Server {
  const askAny = askWorker<ServerCall, unknown>({
    start: () => new Worker(new URL("./server-worker.ts", import.meta.url), { type: "module" }),
    broke: (detail) =>
      new OutOfReach(`What speaks with the server broke down${detail ? `: ${detail}` : ""}.`),
    failed,
  });
  const ask = <Name extends keyof Server>(...call: Extract<ServerCall, readonly [Name, ...unknown[]]>) =>
    askAny(call) as ReturnType<Server[Name]>; // the worker answers each call with what that call of the server gives

  return {
    about: () => ask("about"),
    aircraft: () => ask("aircraft"),
    push: (...given) => ask("push", ...given),
    pull: (...given) => ask("pull", ...given),
    needed: (...given) => ask("needed", ...given),
    devices: (...given) => ask("devices", ...given),
    hasPhoto: (...given) => ask("hasPhoto", ...given),
    putPhoto: (...given) => ask("putPhoto", ...given),
    getPhoto: (...given) => ask("getPhoto", ...given),
  };
}

function failed({ name, message, status, code }: Failure): Error {
  if (name === "Refused") return new Refused(Number(status), String(code), message);
  return name === "OutOfReach" ? new OutOfReach(message) : new Error(`${name}: ${message}`);
}
