import type { Check } from "@witnessmark/book";
import { fromSI, withSymbol } from "@witnessmark/engine";
import { ended } from "@witnessmark/sheet";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { lastLook } from "../../walk/last-look.ts";
import { carriedValue, readingText, temperatureText } from "../../walk/reading-view.ts";
import type { StepView, WalkView } from "../../walk/walk-view.ts";
import { ANSWER_WORDS, REASON_WORDS } from "../../words/answers.ts";
import { capital, lower } from "../../words/capital.ts";
import { clockTime, shortDay, whenShort } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";
import { RightLooks } from "./right-looks.tsx";
import type { ReadingInHand } from "./use-reading.ts";

interface CheckPartsProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView;
  readonly check: Check;
  readonly reading: ReadingInHand | null;
  /** Also how and why: always on a tablet, behind Why on a phone with a reading. */
  readonly everything: boolean;
}

/** What right looks like, how to look, why, and what was seen last. */
export function CheckParts({ open, view, inHand, check, reading, everything }: CheckPartsProps) {
  const { state } = open;
  const again = againText(view, check.id);
  const now = nowText(inHand, open.person.id);
  const others = otherAnswers(open, view, check.id, inHand);
  const beside = besideOf(open, view, check.id);
  return (
    <dl className="parts">
      {again === null ? null : <Part label="Again">{again}</Part>}
      {check.how !== undefined && (everything || reading === null) ? (
        <Part label="Do">{check.how}</Part>
      ) : null}
      <Part label="Should be">{check.shouldBe}</Part>
      <RightLooks check={check} />
      {everything ? <Part label="Why">{whyText(check)}</Part> : null}
      <Part label="Last">{lastText(state, view, check, reading, everything)}</Part>
      {now === null ? null : <Part label="Now">{now}</Part>}
      {now !== null && inHand.status === "open" && inHand.says !== undefined ? (
        <Part label="Open">{openText(inHand.says)}</Part>
      ) : null}
      {others === null ? null : <Part label="Others">{others}</Part>}
      {beside.notes === "" ? null : <Part label="Note">{beside.notes}</Part>}
      {beside.photos.length === 0 ? null : (
        <>
          <dt>Photo</dt>
          <dd>
            <PhotoStrip photos={beside.photos} about={check.title} />
          </dd>
        </>
      )}
    </dl>
  );
}

function Part({ label, children }: { readonly label: string; readonly children: string }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </>
  );
}

/** "Look along the hatch seal: no photo was left in this walk": the part that says why it is open still. */
const openText = (says: string) => `${capital(says.slice(says.indexOf(": ") + 1).trim())}.`;

const whyText = ({ why, hazard }: Check) => `${ended(why)} If missed: ${ended(lower(hazard.ifMissed))}`;

function againText(view: WalkView, check: string): string | null {
  if (!view.walk.askedAgain.includes(check)) return null;
  const interruption = view.walk.interruptions.findLast((each) => each.asksAgain.includes(check));
  if (interruption === undefined) return "Asked again after a break.";
  const left = clockTime(Date.parse(interruption.left));
  const back = clockTime(Date.parse(interruption.back));
  return `Away from ${left} to ${back}: look once more.`;
}

function lastText(
  state: OpenAircraft["state"],
  view: WalkView,
  check: Check,
  reading: ReadingInHand | null,
  everything: boolean,
): string {
  const { answer, reading: read } = lastLook(state, check.id, view.walk.id);
  if (reading !== null && read !== undefined) {
    const text = `${readingText(read, reading.entry)}, ${shortDay(Date.parse(read.recordedAt))}`;
    return everything ? `${text}. ${movedText(reading)}`.trim() : text;
  }
  if (answer === undefined) return "Never seen in this ledger";
  const why = answer.reason === undefined ? "" : ` (${REASON_WORDS[answer.reason].toLowerCase()})`;
  return `${capital(ANSWER_WORDS[answer.answer])}${why}, ${shortDay(Date.parse(answer.recordedAt))}`;
}

/** "At 4 °C that is 5.05: down 0.05 since." */
function movedText({ reading, entry, last, temperature, view }: ReadingInHand): string {
  if (last === undefined || temperature === undefined || reading.limit.by === "fixed") return "";
  const carriedSI = carriedValue(reading, last, temperature);
  if (carriedSI === undefined) return "";
  const carried = fromSI(carriedSI, entry.unit);
  const at = `At ${temperatureText(temperature)} that is ${figure(carried, entry.decimals)}`;
  const now = view.values.now;
  if (now === null) return `${at}.`;
  const moved = now - carried;
  const size = figure(Math.abs(moved), entry.decimals);
  if (Number(size) === 0) return `${at}: nothing has moved.`;
  return `${at}: ${moved < 0 ? "down" : "up"} ${withSymbol(size, entry.unit)} since.`;
}

function nowText(inHand: StepView, person: string): string | null {
  const { answer } = inHand;
  if (answer === undefined || answer.askedAgainBy !== undefined) return null;
  const by = answer.author.id === person ? "" : `, ${answer.author.name}`;
  const why = answer.reason === undefined ? "" : ` (${REASON_WORDS[answer.reason].toLowerCase()})`;
  return `${capital(ANSWER_WORDS[answer.answer])}${why}, ${clockTime(Date.parse(answer.recordedAt))}${by}. Answer again to change it.`;
}

/** Two phones at one check may disagree: both answers stay, and both are shown. */
function otherAnswers(open: OpenAircraft, view: WalkView, check: string, inHand: StepView): string | null {
  const latest = new Map<string, { name: string; text: string }>();
  for (const answer of open.state.answersByWalk.get(view.walk.id) ?? []) {
    if (answer.check !== check || answer.author.id === inHand.answer?.author.id) continue;
    latest.set(answer.author.id, {
      name: answer.author.name,
      text: `${ANSWER_WORDS[answer.answer]}, ${whenShort(Date.parse(answer.recordedAt), Date.now())}`,
    });
  }
  if (latest.size === 0) return null;
  return [...latest.values()].map(({ name, text }) => `${name}: ${text}`).join("; ");
}

/** What was written and photographed beside this check in this walk. */
function besideOf({ state }: OpenAircraft, view: WalkView, check: string) {
  const isHere = (said: {
    readonly subject: { readonly kind: string; readonly id: string };
    readonly hlc: string;
  }) => said.subject.kind === "check" && said.subject.id === check && said.hlc > view.walk.hlc;
  return {
    photos: state.photos.filter(isHere),
    notes: state.notes
      .filter(isHere)
      .map((note) => `“${note.text}”`)
      .join(" "),
  };
}
