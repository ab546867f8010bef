import { HAPPENING_KINDS, METHODS, WALK_KINDS } from "../../schema/kinds.ts";
import { gaugeProposal } from "../gauge-proposal.ts";
import { type BookField, ID, line, measure, NAME, PLACE, type Section, SIDE, text } from "./field.ts";

const BAND: readonly BookField[] = [
  { is: "gauge-measure", key: "low", label: "At least", optional: true },
  { is: "gauge-measure", key: "high", label: "At most", optional: true },
];
const AT = measure("at", "Written for", "°C");

const READING: readonly BookField[] = [
  { is: "one-of", key: "gauge", label: "Gauge", list: ["gauges"] },
  line("quantity", "What is read"),
  {
    ...line("temperatureOf", "Temperature of", { note: "What is as warm as it: tyre, cylinder, oil" }),
    unless: { at: ["limit", "by"], is: "fixed" },
  },
  {
    is: "kinds",
    key: "limit",
    label: "Limit",
    by: "by",
    kinds: {
      fixed: {
        says: "The same at every temperature.",
        fields: BAND,
        blank: { by: "fixed" },
      },
      tyre: {
        says: "A tyre: one service pressure with the usual band about it, moved by temperature. With limits of its own, take gas law.",
        fields: [{ is: "gauge-measure", key: "service", label: "Service pressure" }, AT],
        blank: { by: "tyre", service: "", at: "15 °C" },
      },
      "gas-law": {
        says: "Least and most at one temperature, moved by temperature: a tyre with limits of its own, a strut.",
        fields: [AT, ...BAND],
        blank: { by: "gas-law", at: "15 °C" },
      },
      cylinder: {
        says: "Least and most of a gas bottle at one temperature, moved by temperature.",
        fields: [{ is: "choice", key: "gas", label: "Gas", of: ["oxygen", "nitrogen"] }, AT, ...BAND],
        blank: { by: "cylinder", gas: "oxygen", at: "21 °C" },
      },
      table: {
        says: "Least and most as written for each of several temperatures, straight between them.",
        fields: [
          {
            is: "rows",
            key: "rows",
            label: "Rows",
            one: "row",
            fields: [measure("at", "At", "°C"), ...BAND],
            blank: { at: "" },
          },
        ],
        blank: {
          by: "table",
          rows: [{ at: "0 °C" }, { at: "20 °C" }],
        },
      },
    },
  },
  {
    is: "part",
    key: "outside",
    label: "Outside it",
    optional: true,
    blank: { status: "stop" },
    fields: [
      { is: "choice", key: "status", label: "Is a", of: ["stop", "caution"] },
      line("advice", "Do", { optional: true }),
    ],
  },
  {
    is: "gauge-span",
    key: "scale",
    label: "The rule is drawn",
    optional: true,
    note: "Left out, about the limits",
  },
  {
    is: "gauge-measure",
    key: "step",
    label: "One press of + is",
    optional: true,
    note: "Left out, what the gauge is read to",
  },
];

export const CHECKS: Section = {
  id: "checks",
  title: "Checks",
  group: "walk",
  path: ["checks"],
  one: "check",
  blank: {
    id: "",
    at: "",
    title: "",
    method: "look",
    shouldBe: "",
    why: "",
    hazard: { severity: "medium", ifMissed: "" },
    walks: ["first-of-day"],
    holds: { until: ["flown", "maintenance"] },
  },
  fields: [
    line("title", "Do"),
    { is: "at", key: "at", label: "At" },
    { is: "choice", key: "method", label: "Method", of: METHODS },
    text("how", "How", { optional: true }),
    text("shouldBe", "Should be"),
    text("why", "Why"),
    {
      is: "part",
      key: "hazard",
      label: "If missed",
      blank: { severity: "medium", ifMissed: "" },
      fields: [
        text("ifMissed", "What may follow"),
        { is: "choice", key: "severity", label: "How bad", of: ["high", "medium", "low"] },
      ],
    },
    {
      is: "part",
      key: "reading",
      label: "Reading",
      optional: true,
      blank: { gauge: "", quantity: "", limit: { by: "fixed" } },
      fields: READING,
    },
    {
      is: "part",
      key: "holds",
      label: "Holds",
      blank: { until: ["flown"] },
      fields: [
        { is: "choices", key: "until", label: "Untrue after", of: HAPPENING_KINDS },
        measure("atMost", "At most this old", "h", { optional: true }),
      ],
    },
    { is: "choices", key: "walks", label: "Walks", of: WALK_KINDS },
    {
      is: "rows",
      key: "faults",
      label: "Typical faults",
      one: "fault",
      optional: true,
      fields: [
        ID,
        NAME,
        {
          is: "part",
          key: "measure",
          label: "A size with it",
          optional: true,
          blank: { of: "", allowed: "", upTo: "" },
          fields: [
            line("of", "Of"),
            measure("allowed", "Allowed", "mm"),
            measure("upTo", "The rule ends at", "mm"),
          ],
        },
      ],
      blank: { id: "", name: "" },
    },
    { is: "choice", key: "evidence", label: "Leaves", of: ["look", "reading", "photo"], optional: true },
    measure("least", "Takes at least", "s", { optional: true }),
    { is: "one-of", key: "from", label: "Made from", list: ["stances"], optional: true },
    { is: "some-of", key: "after", label: "Comes after", list: ["checks"], optional: true },
    line("oneSided", "On one side only, because", { optional: true }),
    {
      is: "number",
      key: "since",
      label: "Asked so since revision",
      note: "Set when a book is issued that asks something else here: a look from before it is asked again",
      optional: true,
    },
    line("jasc", "JASC", { optional: true, note: "Four figures" }),
    ID,
  ],
};

export const POINTS: Section = {
  id: "points",
  title: "Points",
  group: "walk",
  path: ["points"],
  one: "point",
  blank: { id: "", name: "", area: "", side: "centre", place: [0, 0, 1], stance: "" },
  fields: [
    NAME,
    line("label", "On the drawing", { optional: true }),
    PLACE,
    SIDE,
    { is: "one-of", key: "area", label: "Area", list: ["areas"] },
    { is: "one-of", key: "stance", label: "Seen from", list: ["stances"] },
    { is: "one-of", key: "mirrors", label: "Mirror image of", list: ["points"], optional: true },
    ID,
  ],
};

export const WALK_SECTIONS: readonly Section[] = [
  CHECKS,
  POINTS,
  {
    id: "stances",
    title: "Stances",
    group: "walk",
    path: ["stances"],
    one: "stance",
    blank: { id: "", name: "", place: [0, 0], facing: 0, posture: "stand" },
    fields: [
      NAME,
      { is: "place", key: "place", label: "Place", ways: ["aft", "right"] },
      { is: "number", key: "facing", label: "Toes point", unit: "° from the nose", step: 10 },
      { is: "choice", key: "posture", label: "One", of: ["stand", "crouch", "inside"] },
      line("inArc", "Why in a propeller’s arc", { optional: true }),
      ID,
    ],
  },
  {
    id: "areas",
    title: "Areas",
    group: "walk",
    path: ["areas"],
    one: "area",
    blank: { id: "", name: "" },
    fields: [NAME, ID],
  },
  {
    id: "ground-gear",
    title: "Ground gear",
    group: "walk",
    path: ["groundGear"],
    one: "item of ground gear",
    blank: { id: "", name: "", count: 1, point: "", stowedIn: [""], why: "" },
    fields: [
      NAME,
      { is: "number", key: "count", label: "Pieces" },
      { is: "one-of", key: "point", label: "On", list: ["points"] },
      { is: "one-of", key: "stance", label: "Taken off from", list: ["stances"], optional: true },
      { is: "lines", key: "stowedIn", label: "Stowed in" },
      text("why", "Why"),
      ID,
    ],
  },
  {
    id: "gauges",
    title: "Gauges",
    group: "walk",
    path: ["gauges"],
    one: "gauge",
    blank: { id: "", name: "", unit: "bar", ...gaugeProposal("bar"), assumed: true },
    fields: [
      NAME,
      line("unit", "Reads in", { note: "bar, psi, °C, mm, L, US qt, V …" }),
      { is: "gauge-measure", key: "accuracy", label: "True to ±" },
      { is: "gauge-measure", key: "resolution", label: "Read to" },
      { is: "assumed", key: "assumed", label: "Common practice" },
      { is: "choice", key: "coverage", label: "Stated as", of: ["bound", "95-percent"], optional: true },
      {
        is: "gauge-span",
        key: "range",
        label: "Its scale goes",
        optional: true,
        note: "Left out, told by the limits",
      },
      ID,
    ],
  },
];
