import type { Book } from "@witnessmark/book";
import type { Bodies } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import { NOT_FOR_PILOT_OWNER_NAMES } from "../rules/eu-part-nco/release.ts";
import { demoBook } from "../testing/demo-book.ts";
import { flightAt } from "../testing/relief-story.ts";
import { at, atText, Story } from "../testing/story.ts";

const single = await demoBook("zz-brk");
const twin = await demoBook("zz-dun");

type Release = Omit<Bodies["discrepancy.released"], "discrepancy" | "rulePack">;

const ALL_NO = Object.fromEntries(NOT_FOR_PILOT_OWNER_NAMES.map((name) => [name, false]));
const BY_OWNER: Release = {
  as: "pilot-owner",
  by: "Ada",
  authority: "LIC 118",
  said: {
    privately: true,
    licence: true,
    owns: true,
    inProgramme: true,
    didIt: true,
    entered: true,
    ...ALL_NO,
  },
};

function released(release?: Release, { book = single, pack = "eu-part-nco" } = {}): Verdict | undefined {
  const story = new Story(book, "07:30");
  const id = story.ada.raise({ words: "Landing light is dead" });
  story.ada.close(id);
  if (release !== undefined)
    story.ada.tell(
      {
        type: "discrepancy.released",
        body: { discrepancy: id, rulePack: "eu-part-nco", ...release },
      },
      "signed",
    );
  const { verdicts } = assess(book, story.state, flightAt("12:00", "VFR", pack), at("09:00"));
  return verdicts.find((verdict) => verdict.id === `release:${id}`);
}

describe("a release under the European rules", () => {
  it("is open until somebody says by whom and on which authority", () => {
    const verdict = released();
    expect(verdict?.status).toBe("open");
    expect(verdict?.says).toContain("released by C. Dow");
  });

  it("by a pilot-owner for limited maintenance is clear, and cites ML.A.803 and appendix II", () => {
    const verdict = released(BY_OWNER);
    expect(verdict?.status).toBe("clear");
    expect(verdict?.sources.map(({ title }) => title).join()).toMatch(/appendix II.*A\.803/);
  });

  // Appendix II (b)(1) to (9): none of them may be released by the pilot-owner
  it.each(NOT_FOR_PILOT_OWNER_NAMES)("by a pilot-owner stops where it is %s", (name) => {
    const verdict = released({ ...BY_OWNER, said: { ...BY_OWNER.said, [name]: true } });
    expect(verdict?.status).toBe("stop");
  });

  it.each(Object.keys(BY_OWNER.said))("by a pilot-owner is open while %s is not said", (name) => {
    const said = Object.fromEntries(Object.entries(BY_OWNER.said).filter(([key]) => key !== name));
    expect(released({ ...BY_OWNER, said })?.status).toBe("open");
  });

  it("by a pilot-owner stops on an aeroplane of more than 2,730 kg, and is open where its mass is not known", () => {
    const heavy = (valueSI: number | undefined): Book => {
      const { maxTakeOff: _was, ...certification } = twin.aircraft.certification ?? {};
      const mass = valueSI === undefined ? {} : { maxTakeOff: { value: valueSI, unit: "kg", valueSI } };
      // only the mass is changed; the parts come from a read book
      return {
        ...twin,
        aircraft: { ...twin.aircraft, certification: { ...certification, ...mass } },
      } as Book;
    };
    expect(released(BY_OWNER, { book: heavy(2731) })?.status).toBe("stop");
    expect(released(BY_OWNER, { book: heavy(2730) })?.status).toBe("clear");
    expect(released(BY_OWNER, { book: heavy(undefined) })?.status).toBe("open");
  });

  it("by certifying staff or an organisation asks for the licence or the approval, and the entry", () => {
    for (const as of ["certifying-staff", "organisation"] as const) {
      const staff = { as, by: "C. Dow", authority: "66.118", said: { entered: true } };
      expect(released(staff)?.status).toBe("clear");
      expect(released({ as, by: "C. Dow", said: { entered: true } })?.status).toBe("open");
      expect(released({ ...staff, said: {} })?.status).toBe("open");
    }
    expect(released({ as: "not-known", by: "nobody knows", said: { entered: true } })?.status).toBe("open");
  });

  it("is not asked under rules that have the entry say it all", () => {
    expect(released(undefined, { pack: "us-part-91" })).toBeUndefined();
  });

  it("is not asked of what was put right before the last flight that was agreed to in another walk", () => {
    const story = new Story(single, "07:30");
    const id = story.ada.raise({ words: "Landing light is dead" });
    story.ada.close(id);
    const flight = flightAt("12:00", "VFR", "eu-part-nco");
    const asked = () =>
      assess(single, story.state, flight, at("09:00")).verdicts.some((each) => each.id === `release:${id}`);
    expect(asked()).toBe(true);
    const walk = story.ada.start("first-of-day");
    const { counts } = assess(single, story.state, flight, at("09:00"));
    story.ada.sign({
      decision: story.id(),
      walk,
      answer: "go",
      flight,
      at: atText("09:00"),
      bookSha256: single.sha256,
      assessmentSha256: "0".repeat(64),
      counts,
      restsOn: [],
      heads: {},
      reasons: [],
    });
    expect(asked()).toBe(true);
    story.ada.start("turnaround");
    expect(asked()).toBe(false);
  });
});
