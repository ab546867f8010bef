import type { BadBook } from "./bad-book.ts";

/** Fields that are nowhere, and runways that cannot be. Edits of the flight book. */
export const badFields: readonly BadBook[] = [
  {
    wrong: "a field beyond the pole",
    edits: [["latitude: 10.5", "latitude: ▶95.0"]],
    says: ["fields[0].latitude: expected a number, at most 90, found 95"],
  },
  {
    wrong: "a field beyond the date line",
    edits: [["longitude: -20.5", "longitude: ▶-200.5"]],
    says: ["fields[0].longitude: expected a number, at least -180, found -200.5"],
  },
  {
    wrong: "an approach at a field that is said to have none",
    edits: [
      [
        "lights: true\n    approach: false",
        "lights: true\n    approach: ▶false\n    approaches: [{ name: RNP 09, kind: precision, minimum: 250 ft, visibility: 800 m }]",
      ],
    ],
    says: [
      "fields[0].approach: expected `true`, where approaches are listed, found `false`; mend it, or take the approaches out",
    ],
  },
  {
    wrong: "a minimum lower than any approach of these has",
    edits: [
      [
        "lights: true\n    approach: false",
        "lights: true\n    approach: true\n    approaches: [{ name: RNP 09, kind: precision, minimum: ▶50 ft, visibility: 800 m }]",
      ],
    ],
    says: [
      "fields[0].approaches[0].minimum: expected 60 to 1500 m, found 50 ft; a height above the field, no altitude",
    ],
  },
  {
    wrong: "coordinates as text",
    edits: [["latitude: 10.5", "latitude: ▶10 30 N"]],
    says: ['fields[0].latitude: expected a number, found "10 30 N"'],
  },
  {
    wrong: "a field above every mountain",
    edits: [["elevation: 120 ft", "elevation: ▶120000 ft"]],
    says: ["fields[0].elevation: expected the height of a field, -450 to 5500 m, found 120000 ft"],
  },
  {
    wrong: "a field code in small letters",
    edits: [["code: ZZAB", "code: ▶zzab"]],
    says: ['fields[1].code: expected four capital letters or figures, found "zzab"'],
  },
  {
    wrong: "two fields of one code",
    edits: [["code: ZZAB", "code: ▶ZZAA"]],
    says: [
      "fields[1].code: expected a code that no other has, found `ZZAA` a second time; give one of the two another code",
    ],
  },
  {
    wrong: "a time zone that is not known",
    edits: [["zone: Etc/UTC", "zone: ▶Etc/UCT2"]],
    says: ['fields[0].zone: expected a time zone of the tz database, as Etc/UTC, found "Etc/UCT2"'],
  },
  {
    wrong: "a field without a runway",
    edits: [
      [
        "    runways:\n      - { name: 18L, trueHeading: 176.5, tora: 600 m, toda: 600 m, asda: 600 m, lda: 599 m, slope: 1 %, surface: grass }\n",
        "    runways: ▶[]\n",
      ],
    ],
    says: ["fields[1].runways: expected a list of at least 1, found an empty list"],
  },
  {
    wrong: "a runway of no length",
    edits: [["tora: 900 m", "tora: ▶0 m"]],
    says: ["fields[0].runways[0].tora: expected a length above 0, found 0 m"],
  },
  {
    wrong: "a take-off distance shorter than the run",
    edits: [["toda: 950 m", "toda: ▶850 m"]],
    says: [
      "fields[0].runways[0].toda: expected a length not below the take-off run available, 900 m, found 850 m; a clearway or stopway adds to the run; without one they are equal",
    ],
  },
  {
    wrong: "a stopway shorter than the run",
    edits: [["asda: 920 m", "asda: ▶820 m"]],
    says: [
      "fields[0].runways[0].asda: expected a length not below the take-off run available, 900 m, found 820 m; a clearway or stopway adds to the run; without one they are equal",
    ],
  },
  {
    wrong: "more to land on than there is",
    edits: [["lda: 880 m", "lda: ▶960 m"]],
    says: [
      "fields[0].runways[0].lda: expected a landing distance within the length there is, 950 m, found 960 m; mend it, or the length for take-off",
    ],
  },
  {
    wrong: "a runway with a number that no runway has",
    edits: [['name: "09"', 'name: ▶"39"']],
    says: [
      'fields[0].runways[0].name: expected 01 to 36, with L, C or R where there are two, in quotes, found "39"',
    ],
  },
  {
    wrong: "a runway number without quotes",
    edits: [['name: "27"', "name: ▶27"]],
    says: ['fields[0].runways[1].name: expected text, found 27; put it in quotes: "27"'],
  },
  {
    wrong: "a runway that points elsewhere than its name",
    edits: [["name: 18L, trueHeading: 176.5", "name: 18L, trueHeading: ▶76.5"]],
    says: [
      "fields[1].runways[0].trueHeading: expected a true heading that agrees with the name 18L and the variation, -3.5°, found 76.5°, which is 80° magnetic; east is plus: true = magnetic + variation",
    ],
  },
  {
    wrong: "a variation of the wrong sign that turns the runway",
    edits: [
      ["magneticVariation: -3\n", "magneticVariation: 30\n"],
      ["trueHeading: 88", "trueHeading: ▶88"],
      ["trueHeading: 268", "trueHeading: ▶268"],
    ],
    says: [
      "fields[0].runways[0].trueHeading: expected a true heading that agrees with the name 09 and the variation, 30°, found 88°, which is 58° magnetic; east is plus: true = magnetic + variation",
      "fields[0].runways[1].trueHeading: expected a true heading that agrees with the name 27 and the variation, 30°, found 268°, which is 238° magnetic; east is plus: true = magnetic + variation",
    ],
  },
  {
    wrong: "two directions that are not opposite",
    edits: [["trueHeading: 268", "trueHeading: ▶272"]],
    says: [
      "fields[0].runways[1].trueHeading: expected half a turn from 09, 268°, found 272°; mend one of the two",
    ],
  },
  {
    wrong: "two directions that both go up",
    edits: [["slope: -0.5 %", "slope: ▶0.5 %"]],
    says: [
      "fields[0].runways[1].slope: expected the slope of 09 the other way round, -0.5 %, found 0.5 %; up is plus, in the direction of the name",
    ],
  },
  {
    wrong: "two directions of two surfaces",
    edits: [["slope: -0.5 %, surface: paved", "slope: -0.5 %, surface: ▶grass"]],
    says: ["fields[0].runways[1].surface: expected the surface of 09, paved, found grass"],
  },
  {
    wrong: "a runway like a wall",
    edits: [["slope: 1 %", "slope: ▶15 %"]],
    says: [
      "fields[1].runways[0].slope: expected a slope of at most 10 % either way, found 15 %; 4 m in 1000 m is 0.4 %",
    ],
  },
  {
    wrong: "a heading past north",
    edits: [["trueHeading: 88", "trueHeading: ▶448"]],
    says: ["fields[0].runways[0].trueHeading: expected a number, less than 360, found 448"],
  },
  {
    wrong: "two runways of one name",
    edits: [['name: "27", trueHeading: 268', 'name: ▶"09", trueHeading: 88']],
    says: [
      "fields[0].runways[1].name: expected a name that no other has, found `09` a second time; give one of the two another name",
    ],
  },
  {
    wrong: "a surface that is not known",
    edits: [["surface: grass }", "surface: ▶gras }"]],
    says: [
      'fields[1].runways[0].surface: expected `paved`, `grass` or `gravel`, found "gras"; did you mean `grass`?',
    ],
  },
  {
    wrong: "a light that is neither there nor not",
    edits: [["lights: false", "lights: ▶some"]],
    says: ['fields[1].lights: expected true or false, found "some"'],
  },
];
