import type { BadBook } from "./bad-book.ts";

/** Masses, arms, limits and stations that no aircraft has. Edits of the flight book. */
export const badLoading: readonly BadBook[] = [
  {
    wrong: "an empty mass below nothing",
    edits: [["mass: 800 kg", "mass: ▶-800 kg"]],
    says: ["loading.empty.mass: expected a mass above 0, found -800 kg"],
  },
  {
    wrong: "a mass in litres",
    edits: [["mass: 804 kg", "mass: ▶804 L"]],
    says: ['loading.empty.revisions[1].mass: expected a mass (kg, g, lb, t, oz), found "804 L", a volume'],
  },
  {
    wrong: "a mass without a unit",
    edits: [["max: 112 kg", "max: ▶112"]],
    says: ['loading.stations[2].max: expected a unit after the number (kg, g, lb, t, oz), found "112"'],
  },
  {
    wrong: "an empty arm ahead of the aircraft",
    edits: [["arm: 2.80 m", "arm: ▶-3.80 m"]],
    says: [
      "loading.empty.arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found -3.8 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "an arm in millimetres written as metres",
    edits: [["arm: 2.805 m", "arm: ▶2805 m"]],
    says: [
      "loading.empty.revisions[1].arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 2805 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "a lateral arm beyond the wing tip",
    edits: [["mass: 806 kg, arm: 2.81 m", "mass: 806 kg, arm: 2.81 m, lateralArm: ▶-6 m"]],
    says: [
      "loading.empty.revisions[0].lateralArm: expected an arm inside the aircraft, -5.20 to 5.20 m to the right, found -6 m; the left has a minus",
    ],
  },
  {
    wrong: "a change before the weighing",
    edits: [["on: 2026-05-04", "on: ▶2026-01-04"]],
    says: [
      "loading.empty.revisions[0].on: expected a date not before 2026-02-03, that of the one before, found 2026-01-04; put them in order, oldest first; the last is in force",
    ],
  },
  {
    wrong: "changes out of order",
    edits: [["on: 2026-06-07", "on: ▶2026-05-03"]],
    says: [
      "loading.empty.revisions[1].on: expected a date not before 2026-05-04, that of the one before, found 2026-05-03; put them in order, oldest first; the last is in force",
    ],
  },
  {
    wrong: "a take-off mass above the ramp mass",
    edits: [["takeOff: 1300 kg", "takeOff: ▶1306 kg"]],
    says: [
      "loading.limits.takeOff: expected a mass not above the ramp limit, 1305 kg, found 1306 kg; mend one of the two",
    ],
  },
  {
    wrong: "a landing mass above the ramp mass",
    edits: [["landing: 1280 kg", "landing: ▶1306 kg"]],
    says: [
      "loading.limits.landing: expected a mass not above the ramp limit, 1305 kg, found 1306 kg; mend one of the two",
    ],
  },
  {
    wrong: "a landing mass above the take-off mass",
    edits: [["landing: 1280 kg", "landing: ▶1301 kg"]],
    says: [
      "loading.limits.landing: expected a mass not above the take-off limit, 1300 kg, found 1301 kg; mend one of the two",
    ],
  },
  {
    wrong: "a zero fuel mass above the take-off mass",
    edits: [["zeroFuel: 1250 kg", "zeroFuel: ▶1301 kg"]],
    says: [
      "loading.limits.zeroFuel: expected a mass not above the take-off limit, 1300 kg, found 1301 kg; mend one of the two",
    ],
  },
  {
    wrong: "a least flying mass above the landing mass",
    edits: [["minimumFlight: 850 kg", "minimumFlight: ▶1290 kg"]],
    says: [
      "loading.limits.minimumFlight: expected a mass not above the landing limit, 1280 kg, found 1290 kg; mend one of the two",
    ],
  },
  {
    wrong: "a least flying mass of nothing",
    edits: [["minimumFlight: 850 kg", "minimumFlight: ▶0 kg"]],
    says: ["loading.limits.minimumFlight: expected a limit above 0, found 0 kg"],
  },
  {
    wrong: "a limit that the empty aircraft breaks",
    edits: [["zeroFuel: 1250 kg", "zeroFuel: ▶804 kg"]],
    says: ["loading.limits.zeroFuel: expected a mass above that of the empty aircraft, 804 kg, found 804 kg"],
  },
  {
    wrong: "a lateral limit of nothing",
    edits: [["lateralMoment: 90 kg·m", "lateralMoment: ▶0 kg·m"]],
    says: ["loading.limits.lateralMoment: expected a limit above 0, found 0 kg·m"],
  },
  {
    wrong: "an imbalance below nothing",
    edits: [["fuelImbalance: 40 kg", "fuelImbalance: ▶-40 kg"]],
    says: ["loading.limits.fuelImbalance: expected a limit above 0, found -40 kg"],
  },
  {
    wrong: "a chord of nothing",
    edits: [["length: 1.4 m }", "length: ▶0 m }"]],
    says: ["loading.mac.length: expected a chord above 0, found 0 m"],
  },
  {
    wrong: "a chord behind the aircraft",
    edits: [["leadingEdge: 2.5 m", "leadingEdge: ▶12.5 m"]],
    says: [
      "loading.mac.leadingEdge: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 12.5 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "a moment of a gear that stays down",
    edits: [["\nfuel:\n", "  gearMoment: ▶5 kg·m\n\nfuel:\n"]],
    says: [
      "loading.gearMoment: expected no moment of the gear, which stays down on this aircraft, found 5 kg·m; take it out, or mend `aircraft.retractable`",
    ],
  },
  {
    wrong: "a bay behind the aircraft",
    edits: [
      ["arm: 4.30 m, max: 55 kg", "arm: ▶9.30 m, max: 55 kg"],
      ["place: [4.3, 0, 1.3]", "place: ▶[4.3, 0, 1.3]"],
    ],
    says: [
      "loading.stations[4].arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 9.3 m; the datum is that of the drawing: x = 0",
      "loading.stations[4].place: expected a place within 0.3 m of the arm, 9.3 m aft of the datum, found x = 4.3 m; mend the arm, or where it is drawn",
    ],
  },
  {
    wrong: "a seat that is drawn elsewhere",
    edits: [
      ["arm: 3.60 m, max: 112 kg", "arm: 3.00 m, max: 112 kg"],
      ["place: [3.6, -0.25, 1.3]", "place: ▶[3.6, -0.25, 1.3]"],
    ],
    says: [
      "loading.stations[2].place: expected a place within 0.3 m of the arm, 3 m aft of the datum, found x = 3.6 m; mend the arm, or where it is drawn",
    ],
  },
  {
    wrong: "a lateral arm in centimetres written as metres",
    edits: [
      ["lateralArm: 0.24 m", "lateralArm: ▶24 m"],
      ["max: 113 kg, place: [", "max: 113 kg, place: ▶["],
    ],
    says: [
      "loading.stations[3].lateralArm: expected an arm inside the aircraft, -5.20 to 5.20 m to the right, found 24 m; the left has a minus",
      "loading.stations[3].place: expected a place within 0.3 m of the lateral arm, 24 m to the right, found y = 0.25 m; mend the arm, or where it is drawn",
    ],
  },
  {
    wrong: "a shelf beside the aircraft",
    edits: [
      ["id: shelf, name: Shelf, kind: bay, side: centre", "id: shelf, name: Shelf, kind: bay, side: ▶centre"],
      ["place: [4.8, 0, 1.5]", "place: ▶[4.8, 0.9, 1.5]"],
    ],
    says: [
      "loading.stations[5].side: expected right, as y = 0.9 m is (y is to the right), found centre; mend the side, or the sign of y",
      "loading.stations[5].place: expected a place on the aircraft as seen from above, found [4.8, 0.9, 1.5], 0.46 m outside; it is [x aft of the datum, y right, z up], in metres",
    ],
  },
  {
    wrong: "a left seat on the right",
    edits: [
      ["kind: seat, side: right, arm: 2.75 m", "kind: seat, side: ▶left, arm: 2.75 m"],
      ["name: Right front seat", "name: ▶Right front seat"],
    ],
    says: [
      'loading.stations[1].name: expected a name for a place whose side is left, found "Right front seat"; the name and the side must say the same',
      "loading.stations[1].side: expected right, as y = 0.25 m is (y is to the right), found left; mend the side, or the sign of y",
    ],
  },
  {
    wrong: "a seat with the name of the other side",
    edits: [["name: Right rear seat", "name: ▶Left rear seat"]],
    says: [
      'loading.stations[3].name: expected a name for a place whose side is right, found "Left rear seat"; the name and the side must say the same',
    ],
  },
  {
    wrong: "a seat that bears less than nothing",
    edits: [["max: 112 kg", "max: ▶-112 kg"]],
    says: ["loading.stations[2].max: expected a mass above 0, found -112 kg"],
  },
  {
    wrong: "a floor of no size",
    edits: [["area: 0.5 m²", "area: ▶0 m²"]],
    says: ["loading.stations[4].floor.area: expected an area above 0, found 0 m²"],
  },
  {
    wrong: "a floor that bears nothing",
    edits: [["maxPerSquareMetre: 150 kg", "maxPerSquareMetre: ▶0 kg"]],
    says: ["loading.stations[4].floor.maxPerSquareMetre: expected a mass above 0, found 0 kg"],
  },
  {
    wrong: "a bay from which it is flown",
    edits: [["place: [4.8, 0, 1.5]", "place: [4.8, 0, 1.5], crew: ▶true"]],
    says: [
      "loading.stations[5].crew: expected a seat, where it is flown from, found a bay; take `crew` out, or write `kind: seat`",
    ],
  },
  {
    wrong: "nobody to fly it",
    edits: [
      [", crew: true", ""],
      ["    - { id: pilot", "    ▶- { id: pilot"],
    ],
    says: [
      "loading.stations: expected a seat from which it is flown, found none; write `crew: true` at the pilot's seat",
    ],
  },
  {
    wrong: "fewer seats than the aircraft has",
    edits: [
      [
        "    - { id: rear-left, name: Left rear seat, kind: seat",
        "    - { id: rear-left, name: Left rear seat, kind: bay",
      ],
      ["    - { id: pilot", "    ▶- { id: pilot"],
    ],
    says: [
      "loading.stations: expected a station for each seat of the aircraft, 4, found 3; mend `aircraft.seats`, or the list of stations",
    ],
  },
  {
    wrong: "a kind of station that is not known",
    edits: [["id: bags, name: Bags, kind: bay", "id: bags, name: Bags, kind: ▶bai"]],
    says: ['loading.stations[4].kind: expected `seat` or `bay`, found "bai"; did you mean `bay`?'],
  },
  {
    wrong: "a shared limit that limits nothing",
    edits: [["max: 60 kg", "max: ▶70 kg"]],
    says: [
      "loading.groups[0].max: expected a mass below that of its stations together, 70 kg, found 70 kg; a group that limits nothing is left out",
    ],
  },
  {
    wrong: "a shared limit of one station",
    edits: [["stations: [bags, shelf]", "stations: ▶[bags]"]],
    says: ["loading.groups[0].stations: expected a list of at least 2, found a list of one"],
  },
  {
    wrong: "a station twice under one limit",
    edits: [["stations: [bags, shelf], max: 60 kg", "stations: [bags, ▶bags], max: 60 kg"]],
    says: [
      "loading.groups[0].stations[1]: expected each item only once, found `bags` a second time; take it out",
    ],
  },
  {
    wrong: "two stations of one id",
    edits: [
      ["id: front, name", "id: ▶pilot, name"],
      ["seat: front", "seat: ▶front"],
    ],
    says: [
      "loading.stations[1].id: expected an id that no other has, found `pilot` a second time; give one of the two another id",
      "oxygen.outlets[1].seat: expected the id of a station of this book, found `front`, which no station has; add it under `loading.stations`, or name another",
    ],
  },
  {
    wrong: "a station at a point that is not there",
    edits: [["point: oxygen, crew", "point: ▶oxigen, crew"]],
    says: [
      "loading.stations[0].point: expected the id of a point of this book, found `oxigen`, which no point has; did you mean `oxygen`?",
    ],
  },
  {
    wrong: "a shared limit of a station that is not there",
    edits: [["stations: [bags, shelf]", "stations: [▶bag, shelf]"]],
    says: [
      "loading.groups[0].stations[0]: expected the id of a station of this book, found `bag`, which no station has; did you mean `bags`?",
    ],
  },
  {
    wrong: "a loading without limits",
    edits: [
      [
        "  limits: { ramp: 1305 kg, takeOff: 1300 kg, zeroFuel: 1250 kg, landing: 1280 kg, minimumFlight: 850 kg, lateralMoment: 90 kg·m, fuelImbalance: 40 kg }\n",
        "",
      ],
      ["loading:\n  datum", "loading:\n  ▶datum"],
    ],
    says: ["loading.limits: expected keys and values, found nothing; add `limits:`"],
  },
];
