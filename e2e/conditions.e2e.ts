import { beforeAll, describe, expect, it } from "vitest";
import type { Phone } from "./harness/browser.ts";
import { Conditions, LOADED_FLIGHT } from "./harness/conditions.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { openScene } from "./harness/scene.ts";
import { introduce } from "./harness/screens.ts";

/** The morning of the demo's island flight. */
const MORNING_ms = Date.parse("2026-11-12T08:05:00Z");

const METAR = "METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008";
const TAF = "TAF ZZQN 120500Z 1206/1218 24014G22KT 9999 BKN022";

/** The conditions of the island flight on that morning, on a phone that has just met the demo. */
async function thatMorning() {
  const shift_ms = MORNING_ms - Date.now();
  const { phone: pickUp, end } = await openScene({ shift_ms });
  const phone = await pickUp({ shift_ms });
  await introduce(phone.page, "MK");
  const conditions = new Conditions(phone.page);
  await conditions.openWith(LOADED_FLIGHT);
  return { phone, conditions, end };
}

describe("the conditions of a flight", () => {
  let phone: Phone;
  let conditions: Conditions;

  beforeAll(async () => {
    const opened = await thatMorning();
    ({ phone, conditions } = opened);
    return opened.end;
  });

  it("a field and a runway are chosen from the book's", async () => {
    await conditions.at("take-off");
    await conditions.choose("Runway", "24");
    await conditions.at("landing");
    await conditions.choose("Runway", "29");
    await conditions.choose("Surface", "wet");
    await conditions.at("take-off");
    expect(await conditions.runway()).toBe("24");
    await conditions.at("landing");
    expect(await conditions.runway()).toBe("29");
  });

  it("two reports in one box are split, and the wind is resolved on the runway", async () => {
    await conditions.paste(`${METAR}=\n${TAF}`);
    await conditions.told("Taken: METAR of ZZQN and TAF of ZZQN.").waitFor();
    // 22 kt from 240 on 290: 22 sin 50 = 16.9 kt across, and 14 cos 50 = 8.99 kt of the steady wind along
    await conditions
      .drawing(
        /^Wind on runway 29: crosswind 17.kt from the left, 8.kt headwind, 20.kt demonstrated, 3.kt to the limit$/,
      )
      .waitFor();
    await conditions.cell(/^Wind 240° 14.G.22.kt$/).waitFor();
    await conditions.cell(/^QNH 1008.hPa$/).waitFor();
    await phone.page.getByText("Observed 07:50, 15 min ago. Counts until 09:05.").waitFor();
    await conditions.verdict("Crosswind, ZZQN 29").filter({ hasText: /3.kt/ }).first().waitFor();
  });

  it("each factor is a dimension of its own under the runway", async () => {
    await conditions
      .drawing(/^Landing, over 50 ft: \d+.m by the table, \d+.m times 1\.15 wet.*, 870.m LDA/)
      .waitFor();
    await conditions.unfold("Your own minima");
    await conditions.type("Landing distance times", "1.15");
    await conditions.drawing(/times 1\.15 wet.*times 1\.15 own, 870.m LDA; \d+.m left$/).waitFor();
  });

  it("what is typed takes the place of the report's, and Undo brings it back", async () => {
    await conditions.unfold("What you read or were told");
    await conditions.type("Wind from, true", "290");
    await conditions.type("Wind speed", "10");
    await conditions.drawing(/crosswind 0.kt, 10.kt headwind/).waitFor();
    await conditions.undo.tap();
    await conditions.undo.tap();
    await conditions.drawing(/crosswind 17.kt from the left/).waitFor();
  });

  it("a wind typed as VRB is worked out for the worst of all directions, and says so", async () => {
    await conditions.type("Wind from, true", "vrb");
    await conditions.type("Wind speed", "6");
    await conditions.drawing(/crosswind 6.kt from either side, 6.kt tailwind/).waitFor();
    await phone.page.getByText(/^VRB: worked out for the worst of all directions/).waitFor();
    await conditions.undo.tap();
    await conditions.undo.tap();
    await conditions.drawing(/crosswind 17.kt from the left/).waitFor();
  });

  it("the cell of the wind opens its working, and there its unit is chosen", async () => {
    await conditions.cell(/^Wind /).tap();
    const dialog = phone.page.getByRole("dialog", { name: "Wind" });
    const unit = dialog.getByRole("combobox", { name: "Wind speeds" });
    await unit.selectOption("mPerS");
    // 14 kt are 7.2 m/s and 22 kt 11.3: each rounded up to half a metre a second
    await conditions.cell(/^Wind 240° 7\.5.G.11\.5.m\/s$/).waitFor();
    await unit.selectOption("kt");
    await dialog.getByRole("button", { name: "Close" }).tap();
  });

  it("speeds stand in figures of their own, and the distance says up to which temperature it fits", async () => {
    const speeds = phone.page.getByRole("region", { name: "Speeds" });
    await speeds.getByRole("button", { name: /^Stall, flaps 35° \d\d.kt$/ }).waitFor();
    await speeds.getByRole("button", { name: /^Approach in the gust \d\d.kt$/ }).waitFor();
    await phone.page.getByText(/^Still fits at 40.°C, where the table ends\.$/).waitFor();
  });

  it("an altimeter setting in the wrong unit is told at its field, and what rests on it is open", async () => {
    await conditions.type("QNH", "29.77");
    await phone.page
      .getByText("Altimeter setting: expected 850 hPa to 1090 hPa, received 29.77 hPa; was that 29.77 inHg?")
      .first()
      .waitFor();
    await conditions.cell(/^Density altitude not known$/).waitFor();
    await conditions.type("QNH", "");
    await conditions.cell(/^Density altitude −[\d,]+.ft$/).waitFor();
  });

  it("a token that is not understood is named, marked, and leaves open what rests on it", async () => {
    await conditions.paste("METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN0Z2 05/03 Q1008");
    const report = phone.page
      .getByRole("article")
      .filter({ has: phone.page.getByRole("heading", { name: "METAR" }) });
    await report.locator("mark").filter({ hasText: "BKN0Z2" }).waitFor();
    await report
      .getByText(/Leaves .*ceiling.* open/)
      .first()
      .waitFor();
    await conditions.paste(METAR);
    await report.locator("mark").waitFor({ state: "detached" });
  });

  it("what is no report, or of another place, changes nothing and says so", async () => {
    await conditions.paste("good morning");
    await conditions.told(/^No report was found\. Expected one such as/).waitFor();
    await conditions.paste("METAR ZZXX 120750Z 24014KT 9999 BKN022 05/03 Q1008");
    await conditions.told("The METAR of ZZXX is of no field of this flight and was left out.").waitFor();
    await conditions.cell(/^QNH 1008.hPa$/).waitFor();
    expect(phone.complaints).toEqual([]);
  });

  it("a route of which a part is missing does not count, and says so", async () => {
    await conditions.unfold("Route");
    await conditions.type("Time, take-off to landing", "");
    await phone.page.getByText("Distance, time and level: it counts when all three are there.").waitFor();
    await conditions.type("Time, take-off to landing", "52");
    await conditions.drawing(/^Wind on runway 29/).waitFor();
  });

  it("a field that is not in the book is said for the flight, and has its wind and its distance", async () => {
    await conditions.at("landing");
    const dialog = await conditions.sayField();
    const line = (label: RegExp) => dialog.getByRole("textbox", { name: label });
    await line(/^Code/).fill("zzst");
    await dialog.getByRole("button", { name: "Use it for this flight" }).tap();
    await dialog.getByRole("alert").waitFor();
    // what cannot be read is told in the colour of a stop, and the cursor is at the first of it
    const [first, says, alert] = await dialog.evaluate((element) => [
      document.activeElement?.getAttribute("aria-describedby"),
      ...[".field .stop", "[role=alert]"].map((part) => {
        const found = element.querySelector(part);
        return found === null ? "" : getComputedStyle(found).color;
      }),
    ]);
    expect(first).toBe(await line(/^Latitude/).getAttribute("aria-describedby"));
    expect(says).toBe(alert);
    await line(/^Latitude/).fill("57 12.6 N");
    await line(/^Longitude/).fill("6 21 W");
    await line(/^Elevation/).fill("40");
    await line(/^Runway/).fill("29");
    await line(/^Its direction/).fill("290");
    await line(/^Length/).fill("900");
    await line(/^Slope/).fill("0");
    await dialog.getByRole("combobox", { name: "Surface" }).selectOption("paved");
    expect((await lookInEveryView(phone.page)).wrong).toEqual([]);
    await dialog.getByRole("button", { name: "Use it for this flight" }).tap();
    await dialog.waitFor({ state: "hidden" });
    expect(await conditions.runway()).toBe("29");
    await conditions.choose("Surface", "dry");
    await conditions.paste("METAR ZZST 120750Z 24014G22KT 9999 BKN022 05/03 Q1008");
    await conditions.told("Taken: METAR of ZZST.").waitFor();
    // 22 sin 50 = 16.9 kt across, as on any runway of 290
    await conditions.drawing(/^Wind on runway 29: crosswind 17.kt from the left/).waitFor();
    await conditions.drawing(/^Landing, over 50 ft: \d+.m by the table.* 900.m/).waitFor();
  });

  it("what was said of it is changed, and offered for the other end of a flight", async () => {
    const dialog = await conditions.sayField("this");
    expect(await dialog.getByRole("textbox", { name: /^Length/ }).inputValue()).toMatch(/^900.m$/);
    await dialog.getByRole("textbox", { name: /^Length/ }).fill("2000 ft");
    await dialog.getByRole("button", { name: "Use it for this flight" }).tap();
    await conditions.drawing(/^Landing, over 50 ft: .* 609.m LDA/).waitFor();
    await conditions.undo.tap();
    await conditions.drawing(/^Landing, over 50 ft: .* 900.m LDA/).waitFor();
    await conditions.choose("Field", "ZZQN");
    expect((await lookInEveryView(phone.page)).wrong).toEqual([]);
  });

  it("without a weather service or a net, fetching says what to do", async () => {
    await conditions.fetch.tap();
    await conditions.told(/Paste the reports/).waitFor();
    await phone.context.setOffline(true);
    await conditions.fetch.tap();
    await conditions.told("There is no net here. Paste the reports, or type what you were told.").waitFor();
    await phone.context.setOffline(false);
  });
});

describe("reports before anything else is said", () => {
  let phone: Phone;
  let conditions: Conditions;
  const TEMPO_TAF =
    "TAF ZZQN 120800Z 1209/1218 26016KT 9999 SCT020 TEMPO 1209/1212 28022G34KT 3000 SHRA BKN008";

  beforeAll(async () => {
    const opened = await thatMorning();
    ({ phone, conditions } = opened);
    return opened.end;
  });

  it("belong to the field that the flight goes to, runway or not; what is left out stays in the box", async () => {
    await conditions.paste(`${TEMPO_TAF}\nMETAR ZZXX 120750Z 24014KT 9999 BKN022 05/03 Q1008`);
    await conditions.told("Taken: TAF of ZZQN.").waitFor();
    await conditions.told("The METAR of ZZXX is of no field of this flight and was left out.").waitFor();
    expect(await conditions.box.inputValue()).toBe("METAR ZZXX 120750Z 24014KT 9999 BKN022 05/03 Q1008");
    await conditions.at("landing");
    // the strongest of the overlapping groups is shown, and named
    await conditions.cell(/^Wind 280° 22.G.34.kt TEMPO 1209\/1212$/).waitFor();
  });

  it("what was told is told no more once it is not true", async () => {
    await conditions.box.fill("");
    await conditions.told("was left out").waitFor({ state: "detached" });
    await conditions.paste(METAR.replace("24014G22KT", "26016KT"));
    await conditions.told("Taken: METAR of ZZQN.").waitFor();
    await phone.page.getByRole("button", { name: "Take away the METAR" }).tap();
    await conditions.told("Taken").waitFor({ state: "detached" });
    await conditions.undo.tap();
  });

  it("the surface is asked for, and wet is offered where rain may fall", async () => {
    await conditions.choose("Runway", "29");
    await phone.page.getByText("Missing: how the surface of ZZQN 29 is.").waitFor();
    // 16 sin 30° = 8 kt by what prevails, of 34 kt in the gust 34 sin 10° = 5.9
    await phone.page
      .getByText(/^8.kt from the left: 260° 16.kt \(METAR\)\. Strongest: 280° 22 G 34.kt \(TEMPO .*, 6.kt/)
      .waitFor();
    await phone.page.getByRole("button", { name: "Wet", exact: true }).tap();
    await conditions.drawing(/^Landing, over 50 ft: .* times 1\.15 wet/).waitFor();
  });

  it("an older one stays out, and says which counts", async () => {
    const older = "METAR ZZQN 120620Z 21006KT 9999 FEW030 04/01 Q1011";
    await conditions.paste(older);
    await conditions
      .told("The METAR of ZZQN of 06:20 is older than what is there: the one of 07:50 stays and counts.")
      .waitFor();
    expect(await conditions.box.inputValue()).toBe(older);
    await conditions.cell(/^QNH 1008.hPa$/).waitFor();
    expect(phone.complaints).toEqual([]);
  });
});
