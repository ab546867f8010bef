import { readFileSync } from "node:fs";
import type { LoadFigures } from "@witnessmark/assess";
import { type Book, readBook } from "@witnessmark/book";
import { chartRange, chartScale } from "../envelope-layout.ts";
import { flightPicture } from "../envelope-picture.ts";
import type { LoadUnits } from "../load-units.ts";
import { pointsOf } from "../phase-rows.ts";

const text = readFileSync(new URL("../../../../../../books/zz-skr.yaml", import.meta.url), "utf8");
const read = await readBook(text, "zz-skr.yaml");
if (!read.ok) throw new Error("the demo's book has faults");

export const DEMO_BOOK: Book = read.book;

export const IN_SI: LoadUnits = { mass: "kg", volume: "L", arm: "m", margin: "mm", temperature: "degC" };

/** As wide as a phone leaves, and as a tablet. */
export const PLOTS = {
  phone: { left: 50, right: 286, top: 22, bottom: 258 },
  tablet: { left: 62, right: 440, top: 22, bottom: 400 },
} as const;

const limit_kg = DEMO_BOOK.loading?.limits.takeOff_kg ?? Number.NaN;

export const scaleOf = (figures: LoadFigures, device: keyof typeof PLOTS = "tablet") =>
  chartScale(chartRange(figures.envelope?.points ?? [], pointsOf(figures), [limit_kg]), PLOTS[device], IN_SI);

/** A load as the chart draws it. */
export const pictured = (figures: LoadFigures, device: keyof typeof PLOTS = "tablet") =>
  flightPicture(scaleOf(figures, device), figures, IN_SI, device === "phone");
