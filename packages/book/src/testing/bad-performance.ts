import type { BadBook } from "./bad-book.ts";

/** Tables that are none, that flatter, or that count something twice. Edits of the flight book. */
export const badPerformance: readonly BadBook[] = [
  {
    wrong: "a mass axis that does not ascend",
    edits: [
      [
        "- { name: mass, unit: kg, values: [1100, 1301] }\n        - { name: headwind, unit: kt, values: [-10, 0, 15] }\n      unit: m",
        "- { name: mass, unit: kg, values: [1301, ▶1100] }\n        - { name: headwind, unit: kt, values: [-10, 0, 15] }\n      unit: m",
      ],
    ],
    says: [
      "performance.tables[0].axes[0].values[1]: expected a value above the one before, 1301, found 1100; put the values in order, lowest first, each once; the cells go with them",
    ],
  },
  {
    wrong: "an axis value twice",
    edits: [["values: [-20, 20]", "values: [20, ▶20]"]],
    says: [
      "performance.tables[2].axes[0].values[1]: expected a value above the one before, 20, found 20; put the values in order, lowest first, each once; the cells go with them",
    ],
  },
  {
    wrong: "an axis twice",
    edits: [["{ name: slope, values", "{ name: ▶oat, unit: °C, values"]],
    says: [
      "performance.tables[2].axes[1].name: expected each axis once, found `oat` a second time; take one of the two out",
    ],
  },
  {
    wrong: "an axis that is not known",
    edits: [["{ name: oat, unit", "{ name: ▶oats, unit"]],
    says: [
      'performance.tables[2].axes[0].name: expected `mass`, `pressureAltitude`, `oat`, `headwind` or `slope`, found "oats"; did you mean `oat`?',
    ],
  },
  {
    wrong: "an axis in another kind of unit",
    edits: [["{ name: oat, unit: °C", "{ name: oat, unit: ▶ft"]],
    says: ['performance.tables[2].axes[0].unit: expected a unit of temperature: K, °C, °F, °R, found "ft"'],
  },
  {
    wrong: "an axis without a unit",
    edits: [["{ name: oat, unit: °C, values", "▶{ name: oat, values"]],
    says: [
      "performance.tables[2].axes[0].unit: expected a unit of temperature: K, °C, °F, °R, found none; add `unit:`",
    ],
  },
  {
    wrong: "an axis in a unit that is not known",
    edits: [["{ name: pressureAltitude, unit: ft", "{ name: pressureAltitude, unit: ▶feets"]],
    says: [
      'performance.tables[3].axes[0].unit: expected a unit of length: m, mm, cm, km, in, ft, NM, mi, found "feets"',
    ],
  },
  {
    wrong: "cells in another kind of unit",
    edits: [["unit: kt\n      cells: [51, 52]", "unit: ▶m\n      cells: [51, 52]"]],
    says: [
      'performance.tables[3].unit: expected a unit of speed: m/s, kt, km/h, mph, ft/min, ft/s, found "m"',
    ],
  },
  {
    wrong: "cells without a unit",
    edits: [
      ["      unit: kt\n      cells: [51, 52]", "      cells: [51, 52]"],
      ["- id: stall", "- ▶id: stall"],
    ],
    says: [
      "performance.tables[3].unit: expected a unit of speed: m/s, kt, km/h, mph, ft/min, ft/s, found none; add `unit:`",
    ],
  },
  {
    wrong: "a row too few",
    edits: [["cells: [[410, 310, 220], [520, 400, null]]", "cells: ▶[[410, 310, 220]]"]],
    says: [
      "performance.tables[0].cells: expected a list of 2, one for each value of mass, found a list of one; write null where the print has no figure",
    ],
  },
  {
    wrong: "a cell too few",
    edits: [["[520, 400, null]", "▶[520, 400]"]],
    says: [
      "performance.tables[0].cells[1]: expected a list of 3, one for each value of headwind, found a list of 2; write null where the print has no figure",
    ],
  },
  {
    wrong: "a cell too many",
    edits: [["cells: [51, 52]", "cells: ▶[51, 52, 53]"]],
    says: [
      "performance.tables[3].cells: expected a list of 2, one for each value of pressureAltitude, found a list of 3; write null where the print has no figure",
    ],
  },
  {
    wrong: "a level of lists too few",
    edits: [["[[410, 310, 220], [520, 400, null]]", "[▶410, ▶310]"]],
    says: [
      "performance.tables[0].cells[0]: expected a list of 3, one for each value of headwind, found 410; there is one level of lists for each axis",
      "performance.tables[0].cells[1]: expected a list of 3, one for each value of headwind, found 310; there is one level of lists for each axis",
    ],
  },
  {
    wrong: "a level of lists too many",
    edits: [["cells: [51, 52]", "cells: [▶[51], 52]"]],
    says: [
      "performance.tables[3].cells[0]: expected a number above 0, or null, found a list of one; there is one level of lists for each axis",
    ],
  },
  {
    wrong: "a hole that is not written",
    edits: [["[520, 400, null]", '[520, ▶"", null]']],
    says: [
      "performance.tables[0].cells[1][1]: expected a number above 0, or null, found empty text; write null where the print has no figure",
    ],
  },
  {
    wrong: "a hole that is only left out",
    edits: [["cells: [51, 52]", "cells:\n        - 51\n        -▶"]],
    says: [
      "performance.tables[3].cells[1]: expected a number above 0, or null, found nothing; write null where the print has no figure",
    ],
  },
  {
    wrong: "a word in a cell",
    edits: [["[520, 400, null]", "[520, ▶400 m, null]"]],
    says: [
      'performance.tables[0].cells[1][1]: expected a number above 0, or null, found "400 m"; write null where the print has no figure',
    ],
  },
  {
    wrong: "a distance of nothing",
    edits: [["[[410, 310, 220]", "[[410, 310, ▶0]"]],
    says: [
      "performance.tables[0].cells[0][2]: expected a number above 0, or null, found 0; write null where the print has no figure",
    ],
  },
  {
    wrong: "a heavier aircraft that needs less",
    edits: [["[520, 400, null]", "[520, ▶309, null]"]],
    says: [
      "performance.tables[0].cells[1][1]: expected at least 310 m, that at mass 1100 kg, headwind 0 kt, found 309 m at mass 1301 kg, headwind 0 kt; one of the two cells is a misprint",
    ],
  },
  {
    wrong: "a tailwind that shortens",
    edits: [
      ["[[410, 310, 220]", "[[410, ▶411, 220]"],
      ["[520, 400, null]", "[520, ▶400, null]"],
    ],
    says: [
      "performance.tables[0].cells[0][1]: expected at most 410 m, that at mass 1100 kg, headwind -10 kt, found 411 m at mass 1100 kg, headwind 0 kt; one of the two cells is a misprint",
      "performance.tables[0].cells[1][1]: expected at least 411 m, that at mass 1100 kg, headwind 0 kt, found 400 m at mass 1301 kg, headwind 0 kt; one of the two cells is a misprint",
    ],
  },
  {
    wrong: "a headwind that lengthens, across a hole",
    edits: [["[[2010, 1610, 1210], [2610, 2011, null]]", "[[2010, null, ▶2020], [2610, 2011, null]]"]],
    says: [
      "performance.tables[1].cells[0][2]: expected at most 2010 ft, that at mass 1100 kg, headwind -10 kt, found 2020 ft at mass 1100 kg, headwind 15 kt; one of the two cells is a misprint",
    ],
  },
  {
    wrong: "hotter air in which it climbs better",
    edits: [["[7.3, 7.4]", "[▶9.4, 7.4]"]],
    says: [
      "performance.tables[2].cells[1][0]: expected at most 9.1 %, that at oat -20 °C, slope -0.02, found 9.4 % at oat 20 °C, slope -0.02; one of the two cells is a misprint",
    ],
  },
  {
    wrong: "a heavier aircraft that stalls later",
    edits: [
      [
        "axes: [{ name: pressureAltitude, unit: ft, values: [0, 5000] }]",
        "axes: [{ name: mass, unit: kg, values: [1000, 1200] }]",
      ],
      ["cells: [51, 52]", "cells: [51, ▶50]"],
    ],
    says: [
      "performance.tables[3].cells[1]: expected at least 51 kt, that at mass 1000 kg, found 50 kt at mass 1200 kg; one of the two cells is a misprint",
    ],
  },
  {
    wrong: "an obstacle that is cleared before lift-off",
    edits: [["[[2010, 1610, 1210], [2610, 2011, null]]", "[[2010, ▶1010, 1009], [2610, 2011, null]]"]],
    says: [
      "performance.tables[1].cells[0][1]: expected more than the ground roll there, 310 m in `take-off-roll`, found 1010 ft at mass 1100 kg, headwind 0 kt; are the two tables changed over?",
    ],
  },
  {
    wrong: "two tables of one id",
    edits: [["- id: take-off-total", "- id: ▶take-off-roll"]],
    says: [
      "performance.tables[1].id: expected an id that no other has, found `take-off-roll` a second time; give one of the two another id",
    ],
  },
  {
    wrong: "two tables of one quantity",
    edits: [
      ["quantity: take-off-over-50ft\n      title", "quantity: ▶take-off-ground-roll\n      title"],
      [
        "quantities: [take-off-ground-roll, take-off-over-50ft]",
        "quantities: [take-off-ground-roll, ▶take-off-over-50ft]",
      ],
    ],
    says: [
      "performance.tables[1].quantity: expected one table for each quantity and flap setting, found `take-off-ground-roll` a second time, as in `take-off-roll`; take one of the two out, or say with `flaps:` how they differ",
      "performance.factors[0].quantities[1]: expected a quantity that a table of this book gives, found `take-off-over-50ft`; add the table, or take it out here",
    ],
  },
  {
    wrong: "a quantity that is not known",
    edits: [["quantity: stall-speed", "quantity: ▶stall-sped"]],
    says: [
      'performance.tables[3].quantity: expected `take-off-ground-roll`, `take-off-over-50ft`, `landing-ground-roll`, `landing-over-50ft`, `climb-gradient`, `go-around-gradient`, `accelerate-stop` or `stall-speed`, found "stall-sped"; did you mean `stall-speed`?',
    ],
  },
  {
    wrong: "a factor that shortens",
    edits: [["factor: 1.25", "factor: ▶0.8"]],
    says: [
      "performance.factors[0].factor: expected at least 1: it never shortens, found 0.8; 15 % more is 1.15",
    ],
  },
  {
    wrong: "a factor that climbs better",
    edits: [["factor: 0.95", "factor: ▶1.05"]],
    says: [
      "performance.factors[1].factor: expected more than 0 and at most 1: it never climbs better, found 1.05",
    ],
  },
  {
    wrong: "a factor that always holds",
    edits: [["when: { condition: snow }", "when: ▶{}"]],
    says: [
      "performance.factors[1].when: expected a surface, a condition or both, found neither; a factor that always holds belongs in the table",
    ],
  },
  {
    wrong: "a factor on a surface that is not known",
    edits: [["surface: grass, condition", "surface: ▶gras, condition"]],
    says: [
      'performance.factors[0].when.surface: expected `paved`, `grass` or `gravel`, found "gras"; did you mean `grass`?',
    ],
  },
  {
    wrong: "a factor of a quantity without a table",
    edits: [
      ["quantities: [climb-gradient]", "quantities: [climb-gradient, ▶accelerate-stop]"],
      ["factor: 0.95", "factor: ▶0.95"],
    ],
    says: [
      "performance.factors[1].quantities[1]: expected a quantity that a table of this book gives, found `accelerate-stop`; add the table, or take it out here",
      "performance.factors[1].factor: expected at least 1: it never shortens, found 0.95; 15 % more is 1.15",
    ],
  },
  {
    wrong: "a factor of a ground roll without a table",
    edits: [
      ["quantity: take-off-ground-roll\n      title", "quantity: accelerate-stop\n      title"],
      [
        "quantities: [take-off-ground-roll, take-off-over-50ft]",
        "quantities: [▶take-off-ground-roll, take-off-over-50ft]",
      ],
      ["of: ground-roll", "of: ▶ground-roll"],
    ],
    says: [
      "performance.factors[0].quantities[0]: expected a quantity that a table of this book gives, found `take-off-ground-roll`; add the table, or take it out here",
      "performance.factors[0].of: expected a table of `take-off-ground-roll`, to take the factor of, found none; add the table, or write `of: total`",
    ],
  },
  {
    wrong: "a quantity twice under one factor",
    edits: [["quantities: [climb-gradient]", "quantities: [climb-gradient, ▶climb-gradient]"]],
    says: [
      "performance.factors[1].quantities[1]: expected each item only once, found `climb-gradient` a second time; take it out",
    ],
  },
  {
    wrong: "two factors of one id",
    edits: [["id: snow-climb", "id: ▶wet-grass"]],
    says: [
      "performance.factors[1].id: expected an id that no other has, found `wet-grass` a second time; give one of the two another id",
    ],
  },
  {
    wrong: "a crosswind of nothing",
    edits: [["value: 17 kt", "value: ▶0 kt"]],
    says: ["performance.crosswind.value: expected a wind above 0, found 0 kt"],
  },
  {
    wrong: "a tailwind below nothing",
    edits: [["tailwindMax: 10 kt", "tailwindMax: ▶-10 kt"]],
    says: ["performance.tailwindMax: expected a wind not below 0, found -10 kt"],
  },
  {
    wrong: "a lift-off below the stall",
    edits: [["approachFactor: 1.31", "approachFactor: 1.31\n  liftOffFactor: ▶0.9"]],
    says: ["performance.liftOffFactor: expected a multiple of the stall speed, 1 to 1.5, found 0.9"],
  },
  {
    wrong: "an approach at the stall",
    edits: [["approachFactor: 1.31", "approachFactor: ▶1.0"]],
    says: ["performance.approachFactor: expected a multiple of the stall speed, 1.1 to 2, found 1"],
  },
  {
    wrong: "a slope like a wall",
    edits: [["max: 2 %", "max: ▶20 %"]],
    says: ["performance.slope.max: expected a slope above 0, at most 10 %, found 20 %; 2 m in 100 m is 2 %"],
  },
  {
    wrong: "a slope in per cent where a share belongs",
    edits: [["takeOffUp: 0.05", "takeOffUp: ▶5"]],
    says: [
      "performance.slope.takeOffUp: expected an added share for 1 % of slope, 0 to 0.5, found 5; 5 % more is 0.05",
    ],
  },
  {
    wrong: "a slope that helps",
    edits: [["landingDown: 0.06", "landingDown: ▶-0.06"]],
    says: [
      "performance.slope.landingDown: expected an added share for 1 % of slope, 0 to 0.5, found -0.06; 5 % more is 0.05",
    ],
  },
  {
    wrong: "a headwind counted double",
    edits: [["headwindCredit: 0.5", "headwindCredit: ▶2"]],
    says: ["performance.headwindCredit: expected 0 to 1, found 2; 0.5 counts half of a headwind"],
  },
  {
    wrong: "a tailwind counted half",
    edits: [["tailwindCharge: 1.5", "tailwindCharge: ▶0.5"]],
    says: [
      "performance.tailwindCharge: expected 1 to 5, found 0.5; 1.5 counts half as much again of a tailwind",
    ],
  },
  {
    wrong: "wind counted in the table and beside it",
    edits: [
      [
        "  headwindCredit: 0.5\n  tailwindCharge: 1.5\n",
        "  windInTable: true\n  headwindCredit: ▶0.5\n  tailwindCharge: ▶1.5\n",
      ],
    ],
    says: [
      "performance.headwindCredit: expected nothing here, where the tables count the wind, found 0.5; take it out, or `windInTable`",
      "performance.tailwindCharge: expected nothing here, where the tables count the wind, found 1.5; take it out, or `windInTable`",
    ],
  },
  {
    wrong: "wind counted in tables that have none",
    edits: [
      ["  tables:\n    - id: take-off-roll", "  windInTable: ▶true\n  tables:\n    - id: take-off-roll"],
      ["  headwindCredit: 0.5\n  tailwindCharge: 1.5\n", ""],
      [
        "- { name: mass, unit: kg, values: [1100, 1301] }\n        - { name: headwind, unit: kt, values: [-10, 0, 15] }\n      unit: m",
        "- { name: mass, unit: kg, values: [1100, 1301] }\n        - { name: pressureAltitude, unit: ft, values: [0, 1000, 2000] }\n      unit: m",
      ],
      [
        "- { name: mass, unit: kg, values: [1100, 1301] }\n        - { name: headwind, unit: kt, values: [-10, 0, 15] }\n      unit: ft",
        "- { name: mass, unit: kg, values: [1100, 1301] }\n        - { name: pressureAltitude, unit: ft, values: [0, 1000, 2000] }\n      unit: ft",
      ],
      ["[[410, 310, 220], [520, 400, null]]", "[[210, 310, 420], [320, 400, null]]"],
      ["[[2010, 1610, 1210], [2610, 2011, null]]", "[[1610, 1710, 1810], [1910, 2011, null]]"],
    ],
    says: [
      "performance.windInTable: expected a table with an axis of headwind, which counts it, found none; add the axis, or take `windInTable` out",
    ],
  },
];
