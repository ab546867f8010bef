import { type Citation, cannotTell, type MissingInput, type Ruling, someMissing } from "./ruling.ts";

/** What a rule calls night. The rules differ, so there is no one answer to "is it night". */
export type NightDefinitionId =
  | "civil-twilight-us"
  | "sunset-to-sunrise"
  | "hour-after-sunset"
  | "civil-twilight-europe";

export interface NightDefinition {
  readonly id: NightDefinitionId;
  /** From when until when, as the rule has it. */
  readonly title: string;
  readonly begins: "evening-civil-twilight-end" | "sunset" | "hour-after-sunset";
  readonly citation: Citation;
}

const definition = (
  id: NightDefinitionId,
  begins: NightDefinition["begins"],
  title: string,
  citation: Citation,
): NightDefinition => ({ id, begins, title, citation });

export const NIGHT_DEFINITIONS: Readonly<Record<NightDefinitionId, NightDefinition>> = {
  "civil-twilight-us": definition(
    "civil-twilight-us",
    "evening-civil-twilight-end",
    "from the end of evening civil twilight to the beginning of morning civil twilight",
    { title: "14 CFR 1.1, night", edition: "current text", status: "from memory" },
  ),
  "sunset-to-sunrise": definition("sunset-to-sunrise", "sunset", "from sunset to sunrise", {
    title: "14 CFR 91.209",
    locator: "(a): position lights; Alaska has its own",
    edition: "current text",
    status: "from memory",
  }),
  "hour-after-sunset": definition(
    "hour-after-sunset",
    "hour-after-sunset",
    "from one hour after sunset to one hour before sunrise",
    { title: "14 CFR 61.57", locator: "(b)", edition: "eCFR, August 2026", status: "published" },
  ),
  "civil-twilight-europe": definition(
    "civil-twilight-europe",
    "evening-civil-twilight-end",
    "from the end of evening civil twilight to the beginning of morning civil twilight, or as the State prescribes",
    {
      title: "Regulation (EU) No 923/2012, article 2: night",
      edition: "consolidated text",
      status: "from memory",
      note: "A State may set another period between sunset and sunrise; look in its AIP.",
    },
  ),
};

/** Times of one local day, milliseconds since 1970 UTC, from whatever works out the sun. */
export interface SunTimes {
  readonly sunrise_ms?: number | undefined;
  readonly sunset_ms?: number | undefined;
  readonly morningCivilTwilight_ms?: number | undefined;
  readonly eveningCivilTwilight_ms?: number | undefined;
}

const HOUR_MS = 3_600_000;

type NightEdges = readonly [
  morning: string,
  evening: string,
  until_ms: number | undefined,
  from_ms: number | undefined,
];

/** The last moment of the night before and the first of the night after, as far as they are known. */
function edgesOf(begins: NightDefinition["begins"], sun: SunTimes): NightEdges {
  if (begins === "evening-civil-twilight-end")
    return [
      "the beginning of morning civil twilight",
      "the end of evening civil twilight",
      sun.morningCivilTwilight_ms,
      sun.eveningCivilTwilight_ms,
    ];
  if (begins === "sunset") return ["sunrise", "sunset", sun.sunrise_ms, sun.sunset_ms];
  const { sunrise_ms, sunset_ms } = sun;
  return [
    "sunrise",
    "sunset",
    sunrise_ms === undefined ? undefined : sunrise_ms - HOUR_MS,
    sunset_ms === undefined ? undefined : sunset_ms + HOUR_MS,
  ];
}

/**
 * Whether a moment is in the night of a definition.
 *
 * @param at_ms milliseconds since 1970 UTC
 * @param sun times of the local day in which the moment lies; on a day on which the sun does not rise or set there are
 *   none, and the caller says what that makes of it
 */
export function nightAt(
  id: NightDefinitionId,
  at_ms: number,
  sun: SunTimes,
): Ruling<{ readonly night: boolean }> {
  const { begins, citation, title } = NIGHT_DEFINITIONS[id];
  const [morning, evening, until_ms, from_ms] = edgesOf(begins, sun);
  const lacks: MissingInput[] = [];
  if (!Number.isFinite(at_ms)) lacks.push({ input: "at_ms", what: "the time asked about" });
  if (until_ms === undefined || !Number.isFinite(until_ms)) lacks.push({ input: "morning", what: morning });
  if (from_ms === undefined || !Number.isFinite(from_ms)) lacks.push({ input: "evening", what: evening });
  const missing = someMissing(lacks);
  if (missing !== undefined || until_ms === undefined || from_ms === undefined)
    return cannotTell([citation], missing ?? [{ input: "sun", what: "the times of the sun" }]);
  const night = at_ms >= from_ms || at_ms < until_ms;
  return {
    known: true,
    night,
    citations: [citation],
    text: night ? `Night: ${title}.` : `Not night: ${title}.`,
    steps: [`Night by ${citation.title} is ${title}.`],
  };
}
