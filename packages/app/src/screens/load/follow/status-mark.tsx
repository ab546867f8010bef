import type { Status } from "@witnessmark/ledger";
import type { RefCallback } from "react";
import { MarkStrokes, STATUS_NAME } from "../../../marks/mark.tsx";
import type { Parts } from "./parts.ts";

const STATUSES: readonly Status[] = ["clear", "caution", "stop", "open"];

const classOf = (status: Status): string => `wm one-of-four is-${status}`;
const classAt = (status: Status): string => `one-of-four is-${status}`;

interface StatusMarkProps {
  readonly status: Status;
  readonly size_px: number;
  readonly part: RefCallback<Element>;
}

/** The witness mark of a status that follows a finger: all four are there and one is seen, so that no mark is made in a drag. */
export function StatusMark({ status, size_px, part }: StatusMarkProps) {
  return (
    <svg
      ref={part}
      className={classOf(status)}
      width={size_px}
      height={size_px}
      viewBox="-24 -24 48 48"
      role="img"
      aria-label={STATUS_NAME[status]}
    >
      <Four size_px={size_px} />
    </svg>
  );
}

/** The same about 0,0 of a drawing, which has a name of its own. */
export function StatusMarkAt({ status, size_px, part }: StatusMarkProps) {
  return (
    <g ref={part} className={classAt(status)} transform={`scale(${(size_px / 48).toFixed(4)})`}>
      <Four size_px={size_px} />
    </g>
  );
}

function Four({ size_px }: { readonly size_px: number }) {
  return STATUSES.map((status) => (
    <g key={status} className={`is-${status}`}>
      <MarkStrokes status={status} size_px={size_px} />
    </g>
  ));
}

/** Another status on a mark. */
export function sayStatus(parts: Parts, name: string, status: Status): void {
  parts.put(name, "class", classOf(status));
  parts.put(name, "aria-label", STATUS_NAME[status]);
}

/** Another status on a mark in a drawing. */
export const sayStatusAt = (parts: Parts, name: string, status: Status): void =>
  parts.put(name, "class", classAt(status));
