import { describe, expect, it } from "vitest";
import { makeClient } from "../client.ts";
import { rawRequest } from "../testing/raw-request.ts";
import { serve } from "../testing/serve.ts";
import { weatherService } from "../weather/weather-service.ts";

// Reports of fields that do not exist, in the form of the service's plain text.
const METARS =
  "METAR ZZTW 120750Z 25010KT 9999 SCT030 05/02 Q1008\nZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008\n";
const TAFS =
  "TAF ZZQN 120500Z 1206/1306 24012KT 9999 SCT025\n  TEMPO 1209/1212 25018G28KT 4000 RA\n  BECMG 1216/1218 30008KT\nTAF AMD ZZPK 120600Z 1206/1218 27010KT 9999 FEW020\n";

const asked: string[] = [];
const answering = (text: (address: URL) => Response): typeof globalThis.fetch => {
  return async (input) => {
    const address = new URL(String(input));
    asked.push(address.href);
    return text(address);
  };
};
const both = answering((address) => new Response(address.pathname.endsWith("/taf") ? TAFS : METARS));

const client = async (fetch: typeof globalThis.fetch, url = "https://weather.example/api/data") => {
  const server = await serve({ weather: weatherService(url, fetch) });
  return { ...makeClient(server.url), url: server.url };
};

describe("reports from the weather service", () => {
  it("come as text, each with its field, and a field without a report says nothing", async () => {
    const answer = await (await client(both)).weather(["ZZTW", "ZZQN", "ZZPK", "ZZZZ"]);
    expect(answer.from).toBe("weather.example");
    expect(answer.reports).toEqual([
      { code: "ZZTW", metar: "METAR ZZTW 120750Z 25010KT 9999 SCT030 05/02 Q1008" },
      {
        code: "ZZQN",
        metar: "ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008",
        taf: "TAF ZZQN 120500Z 1206/1306 24012KT 9999 SCT025 TEMPO 1209/1212 25018G28KT 4000 RA BECMG 1216/1218 30008KT",
      },
      { code: "ZZPK", taf: "TAF AMD ZZPK 120600Z 1206/1218 27010KT 9999 FEW020" },
      { code: "ZZZZ" },
    ]);
    expect(asked).toContain(
      "https://weather.example/api/data/metar?ids=ZZTW%2CZZQN%2CZZPK%2CZZZZ&format=raw",
    );
  });

  it.each([
    [
      answering(() => {
        throw new TypeError("fetch failed");
      }),
      503,
      "weather.example is out of reach from the server (no connection). Paste the reports.",
    ],
    [
      answering(() => new Response("busy", { status: 500 })),
      502,
      "weather.example gave no reports: it answered 500. Paste the reports.",
    ],
    [
      answering(() => new Response("<!DOCTYPE html><p>Sign in</p>")),
      502,
      "weather.example gave no reports: it answered something that is no report. Paste the reports.",
    ],
  ])("that cannot be had are refused in words (%#)", async (fetch, status, message) => {
    await expect((await client(fetch)).weather(["ZZTW"])).rejects.toMatchObject({ status, message });
  });

  it("are not asked for when the service is switched off", async () => {
    await expect((await client(both, "off")).weather(["ZZTW"])).rejects.toMatchObject({
      status: 503,
      code: "weather-off",
    });
  });

  it.each(["", "ZZT", "ZZTW,", "../etc", "ZZTW ZZQN", "A".repeat(400)])(
    "are refused for the codes %j",
    async (codes) => {
      const { url } = await client(both);
      const answer = await rawRequest(url, `/api/weather?codes=${encodeURIComponent(codes)}`);
      expect(answer.status).toBe(400);
    },
  );
});
