import "../../no-eval.ts";
import { answerQuestions } from "../ask-worker.ts";
import { reachServer } from "./reach-server.ts";
import type { Server } from "./server.ts";

/** A call of the server with its arguments. */
export type ServerCall = {
  readonly [Name in keyof Server]: readonly [Name, ...Parameters<Server[Name]>];
}[keyof Server];

const server = reachServer((input, init) => globalThis.fetch(input, init));

answerQuestions((call: ServerCall): Promise<unknown> => {
  switch (call[0]) {
    case "about":
      return server.about();
    case "aircraft":
      return server.aircraft();
    case "push":
      return server.push(call[1], call[2]);
    case "pull":
      return server.pull(call[1], call[2]);
    case "needed":
      return server.needed(call[1], call[2]);
    case "devices":
      return server.devices(call[1]);
    case "hasPhoto":
      return server.hasPhoto(call[1]);
    case "putPhoto":
      return server.putPhoto(call[1], call[2]);
    case "getPhoto":
      return server.getPhoto(call[1]);
  }
});
