import type { LoadFigures, Verdict } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { Fragment, memo, useCallback, useState } from "react";
import { type LiveLoad, useFollowing, useRows } from "./follow/live-load.ts";
import { useParts } from "./follow/parts.ts";
import { StatusMark, sayStatus } from "./follow/status-mark.tsx";
import { type LoadUnits, symbolOf } from "./load-units.ts";
import { type PhaseRow, phaseRow, type RowKey, rowKeys } from "./phase-rows.ts";
import { PhaseWorking } from "./phase-working.tsx";

interface PhaseTableProps {
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly verdicts: readonly Verdict[];
  readonly wide: boolean;
  readonly live: LiveLoad;
}

/** Kilograms against their limit, arm against its range, and what is left, at each moment; each opens its working. */
export const PhaseTable = memo(function PhaseTable(props: PhaseTableProps) {
  const { units, verdicts, wide, live } = props;
  const figures = useRows(live, props.figures);
  const [open, setOpen] = useState<RowKey | null>(null);
  const onOpen = useCallback((at: RowKey) => setOpen((was) => (was === at ? null : at)), []);
  const mass = symbolOf(units.mass);
  const arm = symbolOf(units.arm);
  const columns = wide ? 7 : 5;
  return (
    <table className="phases">
      <caption className="out-of-sight">Mass and centre of gravity along the flight</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="out-of-sight">When</span>
          </th>
          <th scope="col">{mass}</th>
          <th scope="col">limit</th>
          {wide ? (
            <>
              <th scope="col">arm, {arm}</th>
              <th scope="col">range, {arm}</th>
            </>
          ) : null}
          <th scope="col">left</th>
          <th scope="col">
            <span className="out-of-sight">Status</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rowKeys(figures).map((key) => {
          const row = phaseRow(key, figures, units);
          return row === null ? null : (
            <Fragment key={key}>
              <Row
                {...row}
                at={key}
                units={units}
                wide={wide}
                open={open === key}
                onOpen={onOpen}
                live={live}
              />
              {open === key ? (
                <tr className="phase-working">
                  <td colSpan={columns}>
                    <PhaseWorking at={key} figures={figures} units={units} verdicts={verdicts} />
                  </td>
                </tr>
              ) : null}
            </Fragment>
          );
        })}
      </tbody>
    </table>
  );
});

interface RowProps extends PhaseRow {
  readonly at: RowKey;
  readonly units: LoadUnits;
  readonly wide: boolean;
  readonly open: boolean;
  readonly onOpen: (at: RowKey) => void;
  readonly live: LiveLoad;
}

/** In plain values, so that a row whose figures stay is not made again. */
const Row = memo(function Row(props: RowProps) {
  const { at, units, wide, open, onOpen, live, name, under, mass, limit, arm, range, status } = props;
  const parts = useParts();
  useFollowing(
    live,
    ({ figures }) => {
      const now = phaseRow(at, figures, units);
      return now === null ? null : { ...now, arms: inBrief(now) };
    },
    (now) => {
      if (now === null) return true; // the table lets it go
      parts.say("mass", now.mass);
      parts.say("under", now.under);
      parts.say("mass left", now.massLeft);
      parts.put("mass left", "class", leftClass(now.massStatus));
      parts.say("edge left", now.edgeLeft);
      parts.put("edge left", "class", leftClass(now.edgeStatus));
      if (wide) {
        parts.say("arm", now.arm);
        parts.say("range", now.range);
      } else parts.say("arms", now.arms);
      sayStatus(parts, "mark", now.status);
      return true;
    },
  );
  return (
    <tr>
      <th scope="row">
        <button type="button" className="chevron" aria-expanded={open} onClick={() => onOpen(at)}>
          {name}
        </button>
        {wide ? null : (
          <span className="phase-under" ref={parts.ref("arms")}>
            {inBrief({ arm, range })}
          </span>
        )}
        <span className="phase-under" ref={parts.ref("under")}>
          {under}
        </span>
      </th>
      <td>
        <span ref={parts.ref("mass")}>{mass}</span>
      </td>
      <td>{limit}</td>
      {wide ? (
        <>
          <td>
            <span ref={parts.ref("arm")}>{arm}</span>
          </td>
          <td>
            <span ref={parts.ref("range")}>{range}</span>
          </td>
        </>
      ) : null}
      <td>
        <span ref={parts.ref("mass left")} className={leftClass(props.massStatus)}>
          {props.massLeft}
        </span>
        <span ref={parts.ref("edge left")} className={leftClass(props.edgeStatus)}>
          {props.edgeLeft}
        </span>
      </td>
      <td>
        <StatusMark status={status} size_px={22} part={parts.ref("mark")} />
      </td>
    </tr>
  );
});

const leftClass = (status: Status): string => `phase-left ${status}`;

/** On a phone the arm and its range stand under the name of the moment. */
const inBrief = ({ arm, range }: Pick<PhaseRow, "arm" | "range">): string =>
  `${arm}, ${range}`.replaceAll(" ", "\u00a0");
