// Plain lists, apart from the schema: who only lists them need not load it.

/** How a check is made. */
export const METHODS = ["look", "touch", "move", "measure", "count", "drain", "listen"] as const;

export const WALK_KINDS = ["first-of-day", "turnaround", "after-flight"] as const;

/** What can happen to an aircraft that makes earlier looks untrue. */
export const HAPPENING_KINDS = [
  "fuelled",
  "unattended",
  "rain",
  "frost",
  "maintenance",
  "flown",
  "towed",
  "loaded",
] as const;

export const FUEL_KINDS = ["jet-a1", "jet-a", "avgas-100ll", "mogas"] as const;

export const MASK_KINDS = ["diluter-demand", "constant-flow", "cannula"] as const;

/** What a runway is made of. */
export const SURFACES = ["paved", "grass", "gravel"] as const;

/** Classes of airspace, as they are named all over the world. */
export const AIRSPACE_CLASSES = ["A", "B", "C", "D", "E", "F", "G"] as const;

export const APPROACH_KINDS = ["precision", "non-precision"] as const;

/** What lies on a runway. */
export const RUNWAY_CONDITIONS = ["dry", "wet", "standing-water", "snow", "slush", "ice"] as const;

/** What the tables of a book can give. */
export const PERFORMANCE_QUANTITIES = [
  "take-off-ground-roll",
  "take-off-over-50ft",
  "landing-ground-roll",
  "landing-over-50ft",
  "climb-gradient",
  "go-around-gradient",
  "accelerate-stop",
  "stall-speed",
] as const;

/** Axes of a table as a book names them; in SI each has its unit after it. */
export const TABLE_AXES = ["mass", "pressureAltitude", "oat", "headwind", "slope"] as const;

/** Kinds of flight that equipment, papers and experience can be needed for. */
export const KINDS_OF_OPERATION = [
  "vfr-day",
  "vfr-night",
  "ifr-day",
  "ifr-night",
  "icing",
  "over-water",
  "passengers",
  "passengers-by-night",
  "glider-tow",
] as const;

export type KindOfOperation = (typeof KINDS_OF_OPERATION)[number];

/** Category and class of an aircraft, as licences name them. */
export const AIRCRAFT_CLASSES = [
  "single-engine-land",
  "multi-engine-land",
  "single-engine-sea",
  "multi-engine-sea",
  "touring-motor-glider",
  "glider",
] as const;

export type AircraftClass = (typeof AIRCRAFT_CLASSES)[number];

/** Whose use a counter counts. */
export const COUNTER_OWNERS = ["airframe", "engine", "propeller", "pilot"] as const;

/** What a timed item is about. */
export const TIMED_SUBJECTS = [
  "aircraft",
  "engine",
  "propeller",
  "component",
  "pilot",
  "papers",
  "data",
] as const;

/** What drives it; a pure glider has none. */
export const ENGINES = ["turboprop", "piston", "none"] as const;

/** Where it stands on; a mono-wheel has one wheel under the fuselage, and leans on a wing. */
export const GEARS = ["nose-wheel", "tail-wheel", "mono-wheel"] as const;
