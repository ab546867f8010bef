import type { BadBook } from "./bad-book.ts";

/** Values with no unit, or with the wrong one; gauges and limits that cannot be. */
export const badMeasures: readonly BadBook[] = [
  {
    wrong: "a time without a unit",
    edits: [["least: 20 s", "least: ▶20"]],
    says: ['checks[2].least: expected a unit after the number (s, min, h, d), found "20"'],
  },
  {
    wrong: "a pressure where a time belongs",
    edits: [["atMost: 24 h", "atMost: ▶24 bar"]],
    says: ['checks[0].holds.atMost: expected a time (s, min, h, d), found "24 bar", a pressure'],
  },
  {
    wrong: "a unit that is not known",
    edits: [["least: 20 s", "least: ▶20 sek"]],
    says: ['checks[2].least: expected one of s, min, h, d, found "sek"'],
  },
  {
    wrong: "a word where a time belongs",
    edits: [["least: 20 s", "least: ▶soon"]],
    says: ['checks[2].least: expected a number and a unit (s, min, h, d), found "soon"'],
  },
  {
    wrong: "a gauge whose unit is not known",
    edits: [["unit: bar", "unit: ▶bars"]],
    says: [
      'gauges[0].unit: expected a unit that Witnessmark knows, such as bar, psi, °C, mm, L, V, found "bars"; did you mean `bar`?',
    ],
  },
  {
    wrong: "an accuracy in another kind of unit",
    edits: [["accuracy: 0.05 bar", "accuracy: ▶0.05 mm"]],
    says: [
      'gauges[0].accuracy: expected a pressure (Pa, hPa, kPa, MPa, bar, psi, inHg, mmHg, atm, kgf/cm²), found "0.05 mm", a length',
    ],
  },
  {
    wrong: "a range in another kind of unit",
    edits: [["[0 bar, 10 bar]", "[0 bar, ▶10 L]"]],
    says: [
      'gauges[0].range[1]: expected a pressure (Pa, hPa, kPa, MPa, bar, psi, inHg, mmHg, atm, kgf/cm²), found "10 L", a volume',
    ],
  },
  {
    wrong: "a negative accuracy",
    edits: [["accuracy: 0.05 bar", "accuracy: ▶-0.05 bar"]],
    says: [
      "gauges[0].accuracy: expected half the width of the interval that the maker states, not below 0, found -0.05 bar; leave out the minus: ±0.05 bar is written 0.05 bar",
    ],
  },
  {
    wrong: "a resolution of nothing",
    edits: [["resolution: 0.01 bar", "resolution: ▶0 bar"]],
    says: ["gauges[0].resolution: expected one division of the scale, above 0, found 0 bar"],
  },
  {
    wrong: "a range the wrong way round",
    edits: [["[0 bar, 10 bar]", "[▶10 bar, 0 bar]"]],
    says: [
      "gauges[0].range[0]: expected a low end below the high end, 0 bar, found 10 bar; write the lower value first",
    ],
  },
  {
    wrong: "a limit the wrong way round",
    edits: [["low: 1500 psi, high: 1850 psi", "low: ▶1900 psi, high: 1850 psi"]],
    says: [
      "checks[0].reading.limit.low: expected a low end not above the high end, 1850 psi, found 1900 psi; are the two the wrong way round?",
    ],
  },
  {
    wrong: "a limit of another dimension than its gauge",
    edits: [["low: 1500 psi, high", "low: ▶1500 L, high"]],
    says: [
      'checks[0].reading.limit.low: expected a pressure (Pa, hPa, kPa, MPa, bar, psi, inHg, mmHg, atm, kgf/cm²), found "1500 L", a volume; the gauge `oxygen-gauge` reads in psi',
    ],
  },
  {
    wrong: "a limit that limits nothing",
    edits: [
      [", low: 1500 psi, high: 1850 psi }", " }"],
      ["limit: { by: cylinder", "limit: ▶{ by: cylinder"],
    ],
    says: [
      "checks[0].reading.limit: expected a low end, a high end or both, found neither; add `low:` or `high:`; a limit that limits nothing would pass anything",
    ],
  },
  {
    wrong: "a service pressure of nothing",
    edits: [
      ["service: 3.0 bar", "service: ▶0 bar"],
      ["[2.0 bar, 4.0 bar]", "[0 bar, 4.0 bar]"],
    ],
    says: [
      "checks[2].reading.limit.service: expected a service pressure above 0, as the gauge reads it, found 0 bar",
    ],
  },
  {
    wrong: "table rows out of order",
    edits: [["{ at: 15 °C, low: 5.5", "{ at: ▶-30 °C, low: 5.5"]],
    says: [
      "checks[3].reading.limit.rows[1].at: expected a temperature above that of the row before, -20 °C, found -30 °C; put the rows in order, coldest first, each temperature once",
    ],
  },
  {
    wrong: "a temperature twice in a table",
    edits: [["{ at: 15 °C, low: 5.5", "{ at: ▶-20 °C, low: 5.5"]],
    says: [
      "checks[3].reading.limit.rows[1].at: expected a temperature above that of the row before, -20 °C, found -20 °C; put the rows in order, coldest first, each temperature once",
    ],
  },
  {
    wrong: "a hole in a table",
    edits: [["{ at: 15 °C, low: 5.5 US qt, high: 7.5 US qt }", "▶{ at: 15 °C, low: 5.5 US qt }"]],
    says: [
      "checks[3].reading.limit.rows[1].high: expected a high end in every row, as in the others, found a hole; add `high:`; nothing is made up between rows",
    ],
  },
  {
    wrong: "an empty row in a table",
    edits: [["{ at: 15 °C, low: 5.5 US qt, high: 7.5 US qt }", "▶{ at: 15 °C }"]],
    says: [
      "checks[3].reading.limit.rows[1]: expected a low end, a high end or both, found neither; add `low:` or `high:`; a limit that limits nothing would pass anything",
    ],
  },
  {
    wrong: "a table row the wrong way round",
    edits: [["low: 5.5 US qt, high: 7.5 US qt", "low: ▶7.6 US qt, high: 7.5 US qt"]],
    says: [
      "checks[3].reading.limit.rows[1].low: expected a low end not above the high end, 7.5 US qt, found 7.6 US qt; are the two the wrong way round?",
    ],
  },
  {
    wrong: "a scale that begins inside the limit",
    edits: [["scale: [2.0 bar, 4.0 bar]", "scale: [▶3.2 bar, 4.0 bar]"]],
    says: [
      "checks[2].reading.scale[0]: expected a scale that holds the limit, which begins at 3 bar, found one that begins at 3.2 bar; begin it lower, so that a reading outside still shows",
    ],
  },
  {
    wrong: "a scale that ends inside the limit",
    edits: [["scale: [1000 psi, 2000 psi]", "scale: [1000 psi, ▶1800 psi]"]],
    says: [
      "checks[0].reading.scale[1]: expected a scale that holds the limit, which ends at 1850 psi, found one that ends at 1800 psi; end it higher, so that a reading outside still shows",
    ],
  },
  {
    wrong: "a scale the wrong way round",
    edits: [["scale: [2.0 bar, 4.0 bar]", "scale: [▶4.0 bar, 2.0 bar]"]],
    says: [
      "checks[2].reading.scale[0]: expected a low end below the high end, 2 bar, found 4 bar; write the lower value first",
    ],
  },
  {
    wrong: "a scale that the gauge cannot show",
    edits: [["scale: [1000 psi, 2000 psi]", "scale: [1000 psi, ▶3000 psi]"]],
    says: [
      "checks[0].reading.scale[1]: expected a value that the gauge `oxygen-gauge` can show, 0 psi to 2200 psi, found 3000 psi",
    ],
  },
  {
    wrong: "a limit that moves with no temperature",
    edits: [
      ["      temperatureOf: tyre\n", ""],
      ["      gauge: tyre-gauge", "      ▶gauge: tyre-gauge"],
    ],
    says: [
      "checks[2].reading.temperatureOf: expected whose temperature moves the limit, found nothing; add `temperatureOf:`, as tyre, cylinder or oil",
    ],
  },
  {
    wrong: "a temperature that moves nothing",
    edits: [
      ["limit: { by: tyre, service: 3.0 bar, at: 15 °C }", "limit: { by: fixed, low: 2.8 bar }"],
      ["temperatureOf: tyre", "temperatureOf: ▶tyre"],
    ],
    says: [
      'checks[2].reading.temperatureOf: expected no temperature where the limit is the same at all of them, found "tyre"; take it out, or give the limit by gas-law, cylinder, tyre or table',
    ],
  },
  {
    wrong: "a reading as evidence where none is taken",
    edits: [
      [
        "    walks: [first-of-day, turnaround]\n",
        "    evidence: ▶reading\n    walks: [first-of-day, turnaround]\n",
      ],
    ],
    says: [
      "checks[1].evidence: expected a reading to leave as evidence, found a check that asks for none; add `reading:`, or take `look` or `photo` as evidence",
    ],
  },
  {
    wrong: "a tyre measured with a dipstick",
    edits: [
      ["gauge: tyre-gauge", "gauge: ▶dipstick"],
      ["service: 3.0 bar", "service: 3.0 US qt"],
      ["scale: [2.0 bar, 4.0 bar]", "scale: [2 US qt, 4 US qt]"],
    ],
    says: [
      "checks[2].reading.gauge: expected a gauge of pressure, for a limit by tyre, found `dipstick`, a gauge of volume",
    ],
  },
  {
    wrong: "a step of nothing",
    edits: [["step: 50 psi", "step: ▶0 psi"]],
    says: ["checks[0].reading.step: expected a step above 0, found 0 psi"],
  },
  {
    wrong: "a check that takes no time",
    edits: [["least: 20 s", "least: ▶0 s"]],
    says: ["checks[2].least: expected a time above 0, found 0 s"],
  },
  {
    wrong: "a look that never counts",
    edits: [["atMost: 3 d", "atMost: ▶0 d"]],
    says: ["checks[2].holds.atMost: expected a time above 0, found 0 d"],
  },
  {
    wrong: "a rule shorter than what is allowed",
    edits: [["upTo: 40 mm", "upTo: ▶4 mm"]],
    says: [
      "checks[1].faults[0].measure.upTo: expected a rule that reaches past what is allowed, 5 mm, found 4 mm",
    ],
  },
];
