import {
  type AircraftState,
  compareOrder,
  type Discrepancy,
  type OrderKey,
  type PlannedFlight,
} from "@witnessmark/ledger";
import type { Verdict } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { releaseOf } from "../relief/release-of.ts";
import { packOf } from "../relief/relief-of.ts";
import { recorded_ms } from "../walk/moments.ts";
import { sentence } from "../words/count-words.ts";
import { momentText, whenText } from "../words/local-time.ts";
import { titleOf } from "./discrepancies.ts";
import { later } from "./discrepancy-index.ts";
import { FIRST_SOURCE } from "./discrepancy-ways.ts";

type Closing = Discrepancy["closings"][number];
type Release = Discrepancy["releases"][number];

const AS: Readonly<Record<Release["as"], string>> = {
  "pilot-owner": "the pilot-owner",
  "certifying-staff": "certifying staff",
  organisation: "a maintenance organisation",
  "not-known": "on an authority that is not known",
};

interface Waiting {
  readonly discrepancy: Discrepancy;
  readonly closing: Closing;
  /** The last that was said of it since it was last opened. */
  readonly release: Release | undefined;
}

/** What a go was signed on in an earlier walk has been taken over with it; what came since is asked about. */
function since(state: AircraftState, walk: string | undefined) {
  return state.decisions.findLast(({ answer, walk: of }) => answer === "go" && of !== walk);
}

const lastOf = <T extends OrderKey>(all: readonly T[]): T | undefined =>
  all.reduce<T | undefined>((last, each) => later(last, each), undefined);

function waiting({ state, walk, discrepancies }: Context): readonly Waiting[] {
  const last = since(state, walk?.id);
  const found: Waiting[] = [];
  for (const { discrepancy, closing } of discrepancies.putRight) {
    // nearly all that ever was put right was taken over long ago
    if (last !== undefined && compareOrder(closing, last) < 0) break;
    const reopened = lastOf(discrepancy.reopenings);
    const release = lastOf(
      discrepancy.releases.filter((each) => reopened === undefined || compareOrder(each, reopened) > 0),
    );
    found.push({ discrepancy, closing, release });
  }
  return found;
}

const byWhom = ({ as, by, authority }: Release): string =>
  `${by}, ${AS[as]}${authority === undefined ? "" : `, ${authority}`}`;

/**
 * Whether what was put right since the last flight was agreed to was released by one who may: asked under rules that
 * name who may release what. In doubt it is open.
 *
 * @source Regulation (EU) 1321/2014, ML.A.801, ML.A.803 and appendix II
 */
export function releaseVerdicts(context: Context, flight: PlannedFlight | null): readonly Finding[] {
  const { book, clock, index } = context;
  const pack = packOf(flight);
  if (pack.release === undefined) return [];
  return waiting(context).flatMap(({ discrepancy, closing, release }) => {
    const ruled = releaseOf(pack, book, {
      as: release?.as,
      authority: release?.authority,
      said: release?.said ?? {},
    });
    if (ruled === undefined) return [];
    const check = discrepancy.check === undefined ? undefined : index.checks.get(discrepancy.check);
    const title = titleOf(discrepancy, {
      check,
      fault: check?.faults.find(({ id }) => id === discrepancy.fault),
      point: pointName(book, discrepancy.point ?? check?.point),
    });
    const at_ms = recorded_ms(closing);
    const no = ruled.steps.filter(({ holds }) => holds === false);
    const open = ruled.steps.filter(({ holds }) => holds === "unknown");
    const by = release === undefined ? `released by ${closing.releasedBy}` : `released by ${byWhom(release)}`;
    const common = {
      id: `release:${discrepancy.id}`,
      topic: "discrepancy" as const,
      title: `Release: ${title}`,
      says: sentence(`put right ${momentText(at_ms, clock)}, ${by}`),
      working: {
        lines: [
          { label: "Put right", value: `${closing.words}, ${momentText(at_ms, clock)}` },
          { label: "Released by", value: release === undefined ? closing.releasedBy : byWhom(release) },
          ...ruled.steps.map(({ rule, words, holds }) => ({
            label: rule,
            value: `${words}: ${holds === "unknown" ? "not known" : holds ? "yes" : "no"}`,
          })),
        ],
      },
      evidence: [closing.event, ...(release === undefined ? [] : [release.event])],
      sources: [
        bookSource(book, check === undefined ? `discrepancy ${discrepancy.id}` : `check ${check.id}`),
        ...ruled.citations.map((each) => ({
          title: each.title,
          locator: each.locator === undefined ? each.edition : `${each.locator}, ${each.edition}`,
        })),
        FIRST_SOURCE,
      ],
      subject: { kind: "discrepancy" as const, id: discrepancy.id },
    };
    const [first, ...more] = no.map(({ rule, words }) => `${rule} does not hold: ${words}`);
    const [unknown, ...further] = open.map(({ rule, words }) => `Not known, ${rule}: ${words}`);
    const verdict: Verdict =
      first !== undefined
        ? {
            ...common,
            status: "stop",
            because: [first, ...more],
            wayOut: [
              "Have it released by certifying staff or an organisation, ML.A.801(b), then say so on its page",
            ],
          }
        : unknown !== undefined
          ? { ...common, status: "open", missing: [unknown, ...further] }
          : { ...common, status: "clear" };
    return [
      {
        verdict,
        severity: severityOf(check),
        place: (check === undefined ? undefined : index.placeOfCheck.get(check.id)) ?? NOWHERE,
        cause: {
          key: `release:${closing.event}`,
          at_ms,
          words: `Put right ${whenText(at_ms, clock)}: ${title}`,
          reopens: false,
        },
      },
    ];
  });
}
