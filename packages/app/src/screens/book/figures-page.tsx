import {
  changedByHand,
  editDraft,
  type FirstFigures,
  firstFiguresOf,
  type MovedPoint,
  redraw,
  type Section,
  spaced,
} from "@witnessmark/book";
import { InputError } from "@witnessmark/engine";
import { useEffect, useId, useMemo, useState } from "react";
import { href } from "../../routes/route.ts";
import { capital } from "../../words/capital.ts";
import { tally } from "../../words/figures.ts";
import { DATUM_ASKED, DATUM_MEANS, readLength, wrongOf } from "../begin/first-figures.ts";
import { LayoutPicks } from "../begin/layout-picks.tsx";
import { Fields } from "./fields.tsx";
import { linkTo } from "./item-page.tsx";
import { sectionOfPath } from "./section-of-path.ts";
import { type Desk, useDesk } from "./use-desk.ts";

/** The first figures of the aircraft: what is changed here draws the rest anew, but for what was changed by hand. */
export function FiguresPage({ section }: { readonly section: Section }) {
  const desk = useDesk();
  const { plain, draft, registration } = desk;
  const figures = useMemo(() => (plain === null ? undefined : firstFiguresOf(plain)), [plain]);
  if (figures === undefined) {
    return (
      <>
        <p className="bk-says">
          This book was not drawn from first figures: its shape is its own, and is changed part by part.
        </p>
        <a className="button full" href={href({ at: "book", registration, page: "outline" })}>
          To the outline
        </a>
      </>
    );
  }
  if (draft === null) return <Fields fields={section.fields} path={section.path} />;
  return <Figures desk={desk} figures={figures} />;
}

function Figures({ desk, figures }: { readonly desk: Desk; readonly figures: FirstFigures }) {
  const { plain } = desk;
  const [told, setTold] = useState("");
  const [wrong, setWrong] = useState<string | null>(null);
  /** @throws {InputError} figures that no aircraft has */
  const draw = (part: Partial<FirstFigures>) => {
    if (plain === null) return;
    const { edits, stays } = redraw(plain, { ...figures, ...part });
    // as it is: what stands on the shape has been drawn anew with it
    desk.change((draft) => editDraft(draft, edits));
    setTold(
      part.datumAft_m !== undefined
        ? "All that is drawn is counted from there; arms that were typed stay as they are."
        : stays.length === 0
          ? "Drawn anew; everything follows."
          : `Drawn anew; ${tally(stays.length, "place")} changed by hand ${stays.length === 1 ? "stays" : "stay"}.`,
    );
  };
  const pick = (part: Partial<FirstFigures>) => {
    try {
      draw(part);
      setWrong(null);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setWrong(Object.values(wrongOf(error)).join(" "));
    }
  };
  return (
    <div className="bk-figures">
      <p className="bk-says">
        Shape, points and stances are drawn from these. A change draws them anew; what you moved or wrote by
        hand stays.
      </p>
      <div className="bk-figures-row">
        {(["span_m", "length_m", "height_m"] as const).map((key) => (
          <LengthField
            key={key}
            name={key}
            value_m={figures[key]}
            onKeep={(value_m) => draw({ [key]: value_m })}
          />
        ))}
        <SeatsField value={figures.seats} onKeep={(seats) => draw({ seats })} />
        <FigureField
          label={DATUM_ASKED}
          unit="m"
          means={DATUM_MEANS}
          written={String(figures.datumAft_m)}
          onKeep={(text) => {
            const read = readLength(text, "m");
            if (!read.ok) return read.why;
            draw({ datumAft_m: read.value_m ?? 0 });
            return null;
          }}
        />
      </div>
      <LayoutPicks said={figures} onSay={pick} />
      {wrong === null ? null : (
        <p className="bk-fault" role="alert">
          {wrong}
        </p>
      )}
      <p className="bk-told" role="status">
        {told}
      </p>
      <StaysByHand desk={desk} />
    </div>
  );
}

const LENGTHS = { span_m: "Wing span", length_m: "Length", height_m: "Height" } as const;

interface LengthFieldProps {
  readonly name: keyof typeof LENGTHS;
  readonly value_m: number | undefined;
  /** @throws {InputError} */
  readonly onKeep: (value_m: number | undefined) => void;
}

function LengthField({ name, value_m, onKeep }: LengthFieldProps) {
  return (
    <FigureField
      label={LENGTHS[name]}
      unit="m"
      written={value_m === undefined ? "" : String(value_m)}
      placeholder={name === "height_m" ? "as usual" : undefined}
      onKeep={(text) => {
        const read = readLength(text, "m");
        if (!read.ok) return read.why;
        if (read.value_m === undefined && name !== "height_m")
          return "From the three-view drawing of the manual.";
        onKeep(read.value_m);
        return null;
      }}
    />
  );
}

const SEATS_MOST = 20;

function SeatsField({ value, onKeep }: { readonly value: number; readonly onKeep: (seats: number) => void }) {
  return (
    <FigureField
      label="Seats"
      unit=""
      written={String(value)}
      onKeep={(text) => {
        const seats = Number(text);
        if (!Number.isInteger(seats) || seats < 1 || seats > SEATS_MOST)
          return `A whole number from 1 to ${SEATS_MOST}.`;
        onKeep(seats);
        return null;
      }}
    />
  );
}

interface FigureFieldProps {
  readonly label: string;
  readonly unit: string;
  readonly written: string;
  readonly placeholder?: string | undefined;
  readonly means?: string;
  /** @returns what is wrong with it @throws {InputError} */
  readonly onKeep: (text: string) => string | null;
}

/** A figure that is taken when it is left; what is wrong is said beneath it, and the drawing stays as it was. */
function FigureField({ label, unit, written, placeholder, means, onKeep }: FigureFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState(written);
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => {
    setTyped(written);
    setWrong(null);
  }, [written]);
  const keep = () => {
    const text = typed.trim();
    if (text === written) {
      setWrong(null);
      return;
    }
    try {
      setWrong(onKeep(text));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setWrong(Object.values(wrongOf(error)).join(" "));
    }
  };
  return (
    <div className={means === undefined ? undefined : "bk-figures-wide"}>
      <label className="field" htmlFor={id}>
        <span>
          {label}
          {unit === "" ? "" : `, ${unit}`}
        </span>
        <input
          id={id}
          value={typed}
          // a figure that may have a minus: not every keyboard of figures has one
          inputMode={means === undefined ? "decimal" : "text"}
          autoComplete="off"
          placeholder={placeholder}
          aria-invalid={wrong !== null}
          aria-describedby={
            wrong === null ? (means === undefined ? undefined : `${id}-means`) : `${id}-wrong`
          }
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => event.key === "Enter" && keep()}
        />
      </label>
      {means === undefined ? null : (
        <p className="note" id={`${id}-means`}>
          {means}
        </p>
      )}
      {wrong === null ? null : (
        <p className="bk-fault" id={`${id}-wrong`} role="alert">
          {wrong}
        </p>
      )}
    </div>
  );
}

/** What does not follow the first figures any more, each with the way back to where they draw it. */
function StaysByHand({ desk }: { readonly desk: Desk }) {
  const { plain, registration } = desk;
  const { points, parts } = useMemo(
    () => (plain === null ? { points: [], parts: [] } : changedByHand(plain)),
    [plain],
  );
  if (points.length === 0 && parts.length === 0) return null;
  const back = ({ index, drawn }: MovedPoint) => desk.edit([{ set: ["points", index, "place"], to: drawn }]);
  return (
    <section className="bk-by-hand">
      <h3>Changed by hand: these stay</h3>
      <ul>
        {parts.map(({ key, drawn }) => (
          <li key={key}>
            <a href={href({ at: "book", registration, page: sectionOfPath(`geometry.${key}`) ?? "outline" })}>
              {capital(spaced(key))}
            </a>
            <button
              type="button"
              className="button"
              onClick={() =>
                desk.edit([
                  drawn === undefined ? { remove: ["geometry", key] } : { set: ["geometry", key], to: drawn },
                ])
              }
            >
              Draw anew<span className="out-of-sight">: {spaced(key)}</span>
            </button>
          </li>
        ))}
        {points.map((point) => (
          <li key={point.id}>
            <a href={linkTo(registration, "points", point.id)}>{point.name}</a>
            <button type="button" className="button" onClick={() => back(point)}>
              Put back<span className="out-of-sight"> {point.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
