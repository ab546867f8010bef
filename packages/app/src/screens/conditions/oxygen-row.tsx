import type { Assessment } from "@witnessmark/assess";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { sentence } from "./sentence.ts";

/** What the level of the flight asks of oxygen, and the way to what it rests on; nothing where none is needed. */
export function OxygenRow({
  assessment,
  registration,
}: {
  readonly assessment: Assessment;
  readonly registration: string;
}) {
  const verdict = assessment.verdicts.find(({ id }) => id === "oxygen:need");
  if (verdict === undefined || verdict.margin?.text === "none needed") return null;
  return (
    <a className="cond-part cond-oxygen" href={href({ at: "decide", registration })}>
      <Mark status={verdict.status} size_px={24} />
      <span>
        <b>{verdict.title}</b> <span>{sentence(verdict.says)} Its working is on Decide.</span>
      </span>
      <span className={`margin ${verdict.status}`}>{verdict.margin?.text ?? ""}</span>
    </a>
  );
}
