import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { SOON } from "@witnessmark/store/testing/soon";
import { temporaryFolder } from "@witnessmark/store/testing/temporary-folder";
import { describe, expect, it, onTestFinished } from "vitest";
import { makeClient } from "./client.ts";

const PROGRAM = new URL("./main.ts", import.meta.url).pathname;

/** Starts the program as `npm start` does. */
function start(environment: Readonly<Record<string, string>>): { child: ChildProcess; said: () => string } {
  const child = spawn(process.execPath, [PROGRAM], {
    env: { ...process.env, PORT: "0", DATABASE_URL: "", ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  let text = "";
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (part: Buffer) => (text += part));
  return { child, said: () => text };
}

const addressIn = (text: string) => /http:\/\/127\.0\.0\.1:\d+/.exec(text)?.[0] ?? "";

describe("the program", () => {
  it("makes its database with the demo in it, says its address, stops in order, and finds all again", async () => {
    const folder = temporaryFolder();
    onTestFinished(folder.remove);
    const environment = { DATA_DIR: `${folder.path}/data` };
    const first = start(environment);
    await expect.poll(() => addressIn(first.said()), SOON).not.toBe("");
    const client = makeClient(addressIn(first.said()));
    const { epoch, aircraft } = await client.aircraft();
    expect(aircraft.map((one) => one.aircraft)).toContain("ZZ-SKR");
    const line = client.live(() => undefined, new AbortController().signal);
    line.catch(() => undefined);
    first.child.kill("SIGTERM");
    const [code] = await once(first.child, "exit");
    expect(code).toBe(0);
    await expect(line).rejects.toMatchObject({ name: "NoAnswer" });

    const second = start(environment);
    await expect.poll(() => addressIn(second.said()), SOON).not.toBe("");
    expect(second.said()).not.toContain("demo");
    expect(await makeClient(addressIn(second.said())).aircraft()).toEqual({ epoch, aircraft });
  }, 90_000);

  it("says in one line what is wrong, and ends with 1, when it cannot start", async () => {
    const { child, said } = start({ PORT: "x" });
    const [code] = await once(child, "exit");
    expect(code).toBe(1);
    expect(said()).toBe("PORT: expected a whole number from 0 to 65535, found x.\n");
  });
});
