import { askedByChance } from "@witnessmark/assess";
import type { Check } from "@witnessmark/book";
import { differenceFromSI, differenceToSI, roundToSafeSide, UNITS, withSymbol } from "@witnessmark/engine";
import { useEffect, useState } from "react";
import { onTap } from "../../frame/on-tap.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { Mark } from "../../marks/mark.tsx";
import { answered } from "../../walk/answered.ts";
import { stripText } from "../../walk/verdict-strip.ts";
import { postureText, stepName } from "../../walk/walk-view.ts";
import { figure } from "../../words/figures.ts";
import type { CheckCardProps } from "./check-card-props.ts";
import { CheckParts } from "./check-parts.tsx";
import { CouldNot } from "./could-not.tsx";
import { NotRight } from "./not-right.tsx";
import { PhotoAsked } from "./photo-asked.tsx";
import { isOutside, ReadingEntry } from "./reading-entry.tsx";
import { StanceRow } from "./stance-row.tsx";
import { StandCaution } from "./stand-caution.tsx";
import { useHeadingFocus } from "./use-heading-focus.ts";
import { type ReadingInHand, useReading } from "./use-reading.ts";

type Panel = "check" | "not-right" | "could-not" | "photo";

/** One point, one look: what to do, what right looks like, last time, the reading, and the three answers. */
export function CheckCard(props: CheckCardProps) {
  const { open, view, inHand, check, sayer, wide } = props;
  const reading = useReading(open, view.walk.id, check, inHand.status === "open");
  const heading = useHeadingFocus();
  const [panel, setPanel] = useState<Panel>("check");
  const [whyOpen, setWhyOpen] = useState(false);
  const [asks, setAsks] = useState<string | null>(null);
  const back = () => setPanel("check");
  const byChance =
    askedByChance(open.book, open.state, view.walk).has(check.id) &&
    !open.state.evidenceDeclined.some((said) => said.walk === view.walk.id && said.check === check.id);
  const hasPhoto = open.state.photos.some(
    (photo) => photo.subject.kind === "check" && photo.subject.id === check.id && photo.hlc > view.walk.hlc,
  );

  const yes = () => {
    if (reading !== null && reading.read === null) {
      setAsks(`Read the ${reading.reading.quantity} first, or say why you could not`);
      return;
    }
    if ((check.evidence === "photo" || byChance) && !hasPhoto) {
      setPanel("photo");
      return;
    }
    void sayer
      .say([...(reading?.drafts() ?? []), answered(view.walk.id, check.id, "as-it-should-be")])
      .then((kept) => kept && reading?.settle());
  };
  const answers = { yes, no: () => setPanel("not-right"), could: () => setPanel("could-not") };
  useAnswerKeys(panel === "check" ? answers : null);

  if (panel === "not-right") return <NotRight {...props} reading={reading} onBack={back} />;
  if (panel === "could-not") return <CouldNot {...props} onBack={back} />;
  if (panel === "photo") return <PhotoAsked {...props} byChance={byChance} reading={reading} onBack={back} />;

  const outside = isOutside(reading?.verdict ?? null);
  const first = openBefore(view, check);
  return (
    <>
      <div className="card-in">
        <header className="what">
          <p className="where">
            <b>{stepName(inHand.step, open.book.points)}</b>, {postureText(inHand.stop)}
          </p>
          <h2 ref={heading} tabIndex={-1}>
            {check.title}
          </h2>
          <StandCaution open={open} stop={inHand.stop} />
          {first === undefined ? null : (
            <p className="comes-after">First: {first.title}. Until that is done, this does not count.</p>
          )}
          {byChance && !hasPhoto ? <p className="asked-by-chance">This walk asks for a photo here</p> : null}
          {wide ? null : (
            <button
              type="button"
              className="why chevron"
              aria-expanded={whyOpen}
              onClick={() => setWhyOpen(!whyOpen)}
            >
              Why
            </button>
          )}
        </header>
        <CheckParts
          open={open}
          view={view}
          inHand={inHand}
          check={check}
          reading={reading}
          everything={wide || whyOpen}
        />
        {reading === null ? null : <ReadingEntry book={open.book} inHand={reading} wide={wide} />}
      </div>
      <Trouble words={sayer.trouble} onDismiss={sayer.dismiss} />
      <Strip reading={reading} asks={reading?.read === null ? asks : null} size_px={wide ? 32 : 28} />
      {wide ? <StanceRow open={open} view={view} inHand={inHand} /> : null}
      <div className="answers three">
        <Answers filled={outside ? "no" : "yes"} busy={sayer.busy} {...answers} />
      </div>
    </>
  );
}

/** What the book wants done before a check, and is not. */
function openBefore({ byId }: CheckCardProps["view"], { after }: Check): Check | undefined {
  const found = after.map((id) => byId.get(id)).find((before) => before?.status === "open");
  return found?.step.kind === "check" ? found.step.check : undefined;
}

interface AnswersProps {
  readonly filled: "yes" | "no";
  readonly busy: boolean;
  readonly yes: () => void;
  readonly no: () => void;
  readonly could: () => void;
}

function Answers({ filled, busy, yes, no, could }: AnswersProps) {
  const className = (name: "yes" | "no", base: string) => (filled === name ? `${base} filled` : base);
  return (
    <>
      <button
        type="button"
        className={className("yes", "yes")}
        aria-keyshortcuts="1"
        aria-busy={busy}
        {...onTap(yes)}
      >
        As it should be
      </button>
      <button
        type="button"
        className={className("no", "no")}
        aria-keyshortcuts="2"
        aria-busy={busy}
        onClick={no}
      >
        Not right
      </button>
      <button type="button" className="could" aria-keyshortcuts="3" aria-busy={busy} onClick={could}>
        Could not check
      </button>
    </>
  );
}

interface StripProps {
  readonly reading: ReturnType<typeof useReading>;
  readonly asks: string | null;
  readonly size_px: number;
}

/** The verdict on the reading as it stands, over the answers. A check without a reading has none. */
function Strip({ reading, asks, size_px }: StripProps) {
  if (reading === null) return null;
  const status = reading.verdict?.status ?? "open";
  const words =
    asks ?? (reading.verdict === null ? "Not read yet" : stripText(inUnit(reading.verdict, reading)));
  return (
    <p className={`verdict ${status}`} role="status">
      <Mark status={status} size_px={size_px} />
      <span>{words}</span>
    </p>
  );
}

/** The margin in the unit that the reading is made in; rounded down, as a margin is. */
function inUnit(
  verdict: NonNullable<ReadingInHand["verdict"]>,
  { gauge, entry }: ReadingInHand,
): NonNullable<ReadingInHand["verdict"]> {
  const { margin } = verdict;
  if (margin === undefined || entry.unit === gauge.unit || margin.unit !== UNITS[gauge.unit].symbol)
    return verdict;
  const exact = differenceFromSI(differenceToSI(margin.value, gauge.unit), entry.unit);
  const value = roundToSafeSide(exact, 10 ** -entry.decimals, "down");
  const past = margin.text.split(" ").at(-1);
  const size = withSymbol(figure(Math.abs(value), entry.decimals), entry.unit);
  return {
    ...verdict,
    margin: { value, unit: UNITS[entry.unit].symbol, text: value < 0 ? `${size} ${past}` : size },
  };
}

/** 1, 2 and 3 answer, unless something is being typed. */
function useAnswerKeys(answers: Pick<AnswersProps, "yes" | "no" | "could"> | null): void {
  useEffect(() => {
    if (answers === null) return;
    const press = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || document.querySelector("dialog[open]") !== null)
        return;
      if (event.target instanceof HTMLElement && event.target.matches("input, select, textarea")) return;
      if (event.key === "1") answers.yes();
      else if (event.key === "2") answers.no();
      else if (event.key === "3") answers.could();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  });
}
