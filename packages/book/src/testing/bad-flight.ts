import type { BadBook } from "./bad-book.ts";

/** Fuel, oxygen, cabin and ice protection that cannot be. Edits of the flight book. */
export const badFlight: readonly BadBook[] = [
  {
    wrong: "avgas as heavy as jet fuel",
    edits: [["density15: 0.72 kg/L", "density15: ▶0.80 kg/L"]],
    says: [
      "fuel.density15: expected a density of avgas-100ll at 15 °C, 680 to 740 kg/m³, found 0.8 kg/L; mend the density, or the kind",
    ],
  },
  {
    wrong: "a density in another kind of unit",
    edits: [["density15: 0.72 kg/L", "density15: ▶0.72 kg"]],
    says: ['fuel.density15: expected a density (kg/m³, kg/L, g/cm³, lb/US gal), found "0.72 kg", a mass'],
  },
  {
    wrong: "a fuel that is not known",
    edits: [["kind: avgas-100ll", "kind: ▶avgas-100l"]],
    says: [
      'fuel.kind: expected `jet-a1`, `jet-a`, `avgas-100ll` or `mogas`, found "avgas-100l"; did you mean `avgas-100ll`?',
    ],
  },
  {
    wrong: "avgas in a turboprop",
    edits: [
      ["engine: piston", "engine: turboprop"],
      ["kind: avgas-100ll", "kind: ▶avgas-100ll"],
    ],
    says: [
      "fuel.kind: expected a jet fuel, for a turboprop, found avgas-100ll; mend the kind, or `aircraft.engine`",
    ],
  },
  {
    wrong: "taxi that gives fuel",
    edits: [["taxi: 3 kg", "taxi: ▶-3 kg"]],
    says: ["fuel.burn.taxi: expected a mass not below 0, found -3 kg"],
  },
  {
    wrong: "a cruise that burns nothing",
    edits: [["cruise: 25 kg/h", "cruise: ▶0 kg/h"]],
    says: ["fuel.burn.cruise: expected a flow above 0, found 0 kg/h"],
  },
  {
    wrong: "an amount where a flow is burnt",
    edits: [["hold: 20 kg/h", "hold: ▶20 L"]],
    says: [
      'fuel.burn.hold: expected a mass-flow or a volume-flow (kg/s, kg/h, lb/h, m³/s, L/h, L/min, mL/min, US gal/h, imp gal/h, US qt/h), found "20 L", a volume',
    ],
  },
  {
    wrong: "fuel allowed to freeze",
    edits: [["minimumFuelTemperature: -50 °C", "minimumFuelTemperature: ▶-60 °C"]],
    says: [
      "fuel.minimumFuelTemperature: expected a temperature not below the freezing point, -58 °C, found -60 °C",
    ],
  },
  {
    wrong: "a tank to burn that is not there",
    edits: [["order: [[left-tank, right-tank]]", "order: [[left-tank, right-tank, ▶left-tang]]"]],
    says: [
      "fuel.order[0][2]: expected the id of a tank of this book, found `left-tang`, which no tank has; did you mean `left-tank`?",
    ],
  },
  {
    wrong: "a tank that is burnt twice",
    edits: [["order: [[left-tank, right-tank]]", "order: [[left-tank, right-tank], [▶left-tank]]"]],
    says: ["fuel.order[1][0]: expected each tank once, found `left-tank` a second time; take it out"],
  },
  {
    wrong: "a tank that is never burnt",
    edits: [["order: [[left-tank, right-tank]]", "order: ▶[[left-tank]]"]],
    says: [
      "fuel.order: expected every tank of the book, in the order in which they are burnt, found none named `right-tank`; add it; fuel that is never burnt is ballast",
    ],
  },
  {
    wrong: "a cylinder of no size",
    edits: [
      ["    nominal: 1400 L\n", ""],
      ["cylinder:\n    full", "cylinder:\n    ▶full"],
    ],
    says: [
      "oxygen.cylinder: expected either its inner volume or its nominal contents, found neither; write `waterVolume:` or `nominal:`, not both",
    ],
  },
  {
    wrong: "a cylinder of two sizes",
    edits: [["    nominal: 1400 L\n", "    ▶nominal: 1400 L\n    waterVolume: 11 L\n"]],
    says: [
      "oxygen.cylinder: expected either its inner volume or its nominal contents, found both; write `waterVolume:` or `nominal:`, not both",
    ],
  },
  {
    wrong: "a cylinder as large as a room",
    edits: [["nominal: 1400 L", "nominal: ▶1400 m³"]],
    says: [
      "oxygen.cylinder.nominal: expected the size of an aircraft's cylinder, 10 to 30000 L, found 1400 m³",
    ],
  },
  {
    wrong: "a cylinder that is full at nothing",
    edits: [
      ["pressure: 1800 psi, at: 21 °C }\n    gauge", "pressure: ▶18 psi, at: 21 °C }\n    gauge"],
      ["residual: 200 psi", "residual: ▶200 psi"],
    ],
    says: [
      "oxygen.cylinder.full.pressure: expected the pressure of a full cylinder, 10 to 208 bar, found 18 psi",
      "oxygen.cylinder.residual: expected a pressure below that of the full cylinder, 18 psi, found 200 psi",
    ],
  },
  {
    wrong: "a residue below nothing",
    edits: [["residual: 200 psi", "residual: ▶-200 psi"]],
    says: ["oxygen.cylinder.residual: expected a pressure not below 0, found -200 psi"],
  },
  {
    wrong: "a residue of all there is",
    edits: [["residual: 200 psi", "residual: ▶1800 psi"]],
    says: [
      "oxygen.cylinder.residual: expected a pressure below that of the full cylinder, 1800 psi, found 1800 psi",
    ],
  },
  {
    wrong: "oxygen on a dipstick",
    edits: [
      ["gauge: oxygen-gauge\n    residual", "gauge: ▶dipstick\n    residual"],
      ["check: oxygen-pressure\n  outlets", "check: ▶oxygen-pressure\n  outlets"],
    ],
    says: [
      "oxygen.cylinder.gauge: expected a gauge of pressure, found `dipstick`, a gauge of volume",
      "oxygen.cylinder.check: expected a check that reads `dipstick`, found `oxygen-pressure`, which reads `oxygen-gauge`; mend the gauge, or name the check that reads it",
    ],
  },
  {
    wrong: "oxygen on a gauge that is not there",
    edits: [
      ["gauge: oxygen-gauge\n    residual", "gauge: ▶oxygen-gauges\n    residual"],
      ["check: oxygen-pressure\n  outlets", "check: ▶oxygen-pressure\n  outlets"],
    ],
    says: [
      "oxygen.cylinder.gauge: expected the id of a gauge of this book, found `oxygen-gauges`, which no gauge has; did you mean `oxygen-gauge`?",
      "oxygen.cylinder.check: expected a check that reads `oxygen-gauges`, found `oxygen-pressure`, which reads `oxygen-gauge`; mend the gauge, or name the check that reads it",
    ],
  },
  {
    wrong: "oxygen by a check that is not there",
    edits: [["check: oxygen-pressure\n  outlets", "check: ▶oxygen-presure\n  outlets"]],
    says: [
      "oxygen.cylinder.check: expected the id of a check of this book, found `oxygen-presure`, which no check has; did you mean `oxygen-pressure`?",
    ],
  },
  {
    wrong: "oxygen by a check that reads nothing",
    edits: [["check: oxygen-pressure\n  outlets", "check: ▶right-brake\n  outlets"]],
    says: [
      "oxygen.cylinder.check: expected a check that reads `oxygen-gauge`, found `right-brake`, which reads nothing; mend the gauge, or name the check that reads it",
    ],
  },
  {
    wrong: "oxygen by a check of two tyres",
    edits: [
      ["gauge: oxygen-gauge\n    residual", "gauge: tyre-gauge\n    residual"],
      ["check: oxygen-pressure\n  outlets", "check: ▶tyre-pressure\n  outlets"],
    ],
    says: [
      "oxygen.cylinder.check: expected a check that is made at one point, found `tyre-pressure`, made at 2; one cylinder has one pressure: name a check of its own",
    ],
  },
  {
    wrong: "a mask for nobody",
    edits: [["seat: front", "seat: ▶fronts"]],
    says: [
      "oxygen.outlets[1].seat: expected the id of a station of this book, found `fronts`, which no station has; did you mean `front`?",
    ],
  },
  {
    wrong: "a mask for the bags",
    edits: [["seat: front", "seat: ▶bags"]],
    says: ["oxygen.outlets[1].seat: expected the id of a seat, found `bags`, a bay"],
  },
  {
    wrong: "a mask that is not known",
    edits: [["mask: cannula", "mask: ▶canula"]],
    says: [
      'oxygen.outlets[1].mask: expected `diluter-demand`, `constant-flow` or `cannula`, found "canula"; did you mean `cannula`?',
    ],
  },
  {
    wrong: "two masks of one id",
    edits: [["id: mask-2", "id: ▶mask-1"]],
    says: [
      "oxygen.outlets[1].id: expected an id that no other has, found `mask-1` a second time; give one of the two another id",
    ],
  },
  {
    wrong: "a flow that goes back",
    edits: [["flow: 2.5 L/min", "flow: ▶-2.5 L/min"]],
    says: ["oxygen.outlets[0].flows[1].flow: expected a flow not below 0, found -2.5 L/min"],
  },
  {
    wrong: "flows out of order",
    edits: [["cabinAltitude: 18000 ft", "cabinAltitude: ▶8000 ft"]],
    says: [
      "oxygen.outlets[0].flows[1].cabinAltitude: expected an altitude above that of the row before, 10000 ft, found 8000 ft; put the rows in order, lowest first",
    ],
  },
  {
    wrong: "levels out of order",
    edits: [
      ["{ level: 16000 ft, cabin: 6000 ft }", "{ level: ▶9000 ft, cabin: 6000 ft }"],
      ["to: 10003 ft", "to: ▶10003 ft"],
    ],
    says: [
      "cabin.altitudes[2].level: expected a level above that of the row before, 10002 ft, found 9000 ft; put the rows in order, lowest first",
      "cabin.emergencyDescent.to: expected a level below the highest of the cabin's, 9000 ft, found 10003 ft",
    ],
  },
  {
    wrong: "a cabin that falls as the aircraft climbs",
    edits: [["cabin: 6000 ft", "cabin: ▶1900 ft"]],
    says: [
      "cabin.altitudes[2].cabin: expected a cabin altitude not below that of the row before, 2000 ft, found 1900 ft",
    ],
  },
  {
    wrong: "a cabin above the aircraft",
    edits: [
      ["level: 10002 ft, cabin: 2000 ft", "level: 10002 ft, cabin: ▶12000 ft"],
      ["cabin: 6000 ft", "cabin: ▶6000 ft"],
    ],
    says: [
      "cabin.altitudes[1].cabin: expected a cabin altitude not above the level, 10002 ft, found 12000 ft; are the two the wrong way round?",
      "cabin.altitudes[2].cabin: expected a cabin altitude not below that of the row before, 12000 ft, found 6000 ft",
    ],
  },
  {
    wrong: "a cabin that the hull does not bear",
    edits: [
      ["maxDifferential: 4.0 psi", "maxDifferential: 3.5 psi"],
      ["level: 10002 ft, cabin: 2000 ft", "level: 10002 ft, cabin: ▶2000 ft"],
      ["cabin: 6000 ft", "cabin: ▶6000 ft"],
    ],
    says: [
      "cabin.altitudes[1].cabin: expected a cabin that the hull bears at 10002 ft, with at most 3.5 psi, found 2000 ft, which takes 24.5 kPa; mend the row, or `maxDifferential`",
      "cabin.altitudes[2].cabin: expected a cabin that the hull bears at 16000 ft, with at most 3.5 psi, found 6000 ft, which takes 26.3 kPa; mend the row, or `maxDifferential`",
    ],
  },
  {
    wrong: "a hull that bears nothing",
    edits: [
      ["maxDifferential: 4.0 psi", "maxDifferential: ▶0 psi"],
      ["level: 10002 ft, cabin: 2000 ft", "level: 10002 ft, cabin: ▶2000 ft"],
      ["cabin: 6000 ft", "cabin: ▶6000 ft"],
    ],
    says: [
      "cabin.altitudes[1].cabin: expected a cabin that the hull bears at 10002 ft, with at most 0 psi, found 2000 ft, which takes 24.5 kPa; mend the row, or `maxDifferential`",
      "cabin.altitudes[2].cabin: expected a cabin that the hull bears at 16000 ft, with at most 0 psi, found 6000 ft, which takes 26.3 kPa; mend the row, or `maxDifferential`",
      "cabin.maxDifferential: expected a pressure above 0, found 0 psi",
    ],
  },
  {
    wrong: "an emergency descent that climbs",
    edits: [["rate: 2500 ft/min", "rate: ▶-2500 ft/min"]],
    says: ["cabin.emergencyDescent.rate: expected a rate above 0, found -2500 ft/min"],
  },
  {
    wrong: "an emergency descent to the top",
    edits: [["to: 10003 ft", "to: ▶16000 ft"]],
    says: [
      "cabin.emergencyDescent.to: expected a level below the highest of the cabin's, 16000 ft, found 16000 ft",
    ],
  },
  {
    wrong: "a cabin that is neither pressurised nor not",
    edits: [["pressurised: true", "pressurised: ▶yes"]],
    says: ['cabin.pressurised: expected `false` or `true`, found "yes"'],
  },
  {
    wrong: "known icing with nothing against it",
    edits: [["known: false\n  parts: [Pitot heat]", "known: true\n  parts: ▶[]"]],
    says: [
      "iceProtection.parts: expected at least one part that is protected, for flight into known icing, found an empty list; name the parts, or write `known: false`",
    ],
  },
];
