import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Case, type CaseInputs, type FiledCase, isGiven, readCases } from "./case-file.ts";
import { type Compared, runCase } from "./run-case.ts";

/** Where the page lies; a test checks that it is up to date. */
export const PAGE = join(import.meta.dirname, "..", "docs", "validation.md");

const INTRODUCTION = `# What the numbers are checked against

Every case that the tests compare the program's quantities with, made from the files in \`reference/\` by
\`node reference/list-cases.ts --write\`. A case is *published* (document, edition, place), *common practice* (no
source), or *from memory* (remembered, not read in print). Published covers figures that were reckoned from a published
formula or computed with a reference library; the note then says so. Where a case does not agree, the printed figure is
at fault, and the reason is given.
`;

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");

/** Enough digits to compare, and none that the last bit of a power function could change. */
const figure = (value: number): string => String(Number(value.toPrecision(9)));

function sourceText({ source, status, note }: Case): string {
  const place = [source.title, source.edition, source.locator]
    .filter((part) => part !== undefined)
    .join("; ");
  const linked = source.url === undefined ? place : `[${place}](${source.url})`;
  return `${linked}${status === "published" ? "" : ` (*${status}*)`}${note === undefined ? "" : `. ${note}`}`;
}

/** Longer lists than this stand in their file; the page shows how they begin. */
const LISTED = 40;

const listText = (values: readonly number[]): string =>
  values.length <= LISTED ? values.join("; ") : `${values.slice(0, 4).join("; ")}; … ${values.length} values`;

/** `elevation_ft 5883, altimeterSetting_inHg 30.1`; a quantity that stands for an input is shown with its own inputs. */
const inputsText = (inputs: CaseInputs): string =>
  Object.entries(inputs)
    .map(([name, input]) =>
      isGiven(input)
        ? `${name} ${typeof input === "number" ? input : listText(input)}`
        : `${name} from ${input.quantity} (${inputsText(input.inputs)})`,
    )
    .join(", ");

function row(one: Case, { name, expected, computed, tolerance }: Compared): string {
  const why = one.disagrees === undefined ? "" : ` **Does not agree:** ${one.disagrees.why}`;
  const cells = [
    one.id,
    one.quantity,
    inputsText(one.inputs),
    name,
    figure(expected),
    figure(computed),
    figure(tolerance),
  ];
  return `| ${[...cells, sourceText(one) + why].map(cell).join(" | ")} |`;
}

/** The page as Markdown. */
export function validationPage(filed: readonly FiledCase[]): string {
  const sections = Map.groupBy(filed, ({ file }) => file);
  const counts = Map.groupBy(filed, ({ case: one }) => one.status);
  const count = (status: Case["status"]): number => counts.get(status)?.length ?? 0;
  const disagreeing = filed.filter(({ case: one }) => one.disagrees !== undefined).length;
  const parts = [
    INTRODUCTION,
    `${filed.length} cases: ${count("published")} published, ${count("common practice")} common practice, ` +
      `${count("from memory")} from memory; ${disagreeing} with a printed figure that is at fault.\n`,
  ];
  for (const [file, cases] of sections) {
    const rows = cases.flatMap(({ case: one }) => runCase(one).map((compared) => row(one, compared)));
    parts.push(
      `## ${file.replace(".json", "")}\n\n${cases[0]?.about ?? ""}\n`,
      [
        "| case | quantity | inputs | figure | expected | computed | tolerance | source |",
        "| --- | --- | --- | --- | ---: | ---: | ---: | --- |",
        ...rows,
      ].join("\n"),
      "",
    );
  }
  return parts.join("\n");
}

export const pageOnDisk = (): string => readFileSync(PAGE, "utf8");

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const page = validationPage(readCases(import.meta.dirname));
  if (process.argv.includes("--write")) writeFileSync(PAGE, page);
  else process.stdout.write(page);
}
