import { UNITS, withSymbol } from "@witnessmark/engine";
import { newId, type Read } from "@witnessmark/ledger";
import { useRef, useState } from "react";
import { onTap } from "../../frame/on-tap.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { TwoPartRule } from "../../instruments/two-part-rule.tsx";
import type { Draft } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { answered } from "../../walk/answered.ts";
import { discrepancyWords, faultRule, lastOfFault, openOfCheck } from "../../walk/fault-entry.ts";
import { stepName } from "../../walk/walk-view.ts";
import { figure } from "../../words/figures.ts";
import type { CheckCardProps } from "./check-card-props.ts";
import { FigurePopup } from "./figure-popup.tsx";
import { PanelHead } from "./panel-head.tsx";
import { PhotoButton } from "./photo-button.tsx";
import { understandFigure } from "./understand-figure.ts";
import type { ReadingInHand } from "./use-reading.ts";

interface NotRightProps extends CheckCardProps {
  readonly reading: ReadingInHand | null;
  readonly onBack: () => void;
}

/** What is not right, in taps: the fault, its size where the book asks for one, words, a photo. Raises a discrepancy. */
export function NotRight(props: NotRightProps) {
  const { open, view, check, sayer, reading, wide } = props;
  const keep = useKeep();
  const known = openOfCheck(open.state, check);
  const [still, setStill] = useState<string | null>(null);
  const [faultId, setFaultId] = useState<string | null>(null);
  const [size, setSize] = useState<number | null>(null);
  const [words, setWords] = useState("");
  const [photos, setPhotos] = useState<readonly File[]>([]);
  const [raisedAs] = useState(newId);
  // a photo that is kept already is not kept again when the rest is tried once more
  const keptPhotos = useRef(new Set<File>());
  const [asked, setAsked] = useState(false);
  const fault = check.faults.find((each) => each.id === faultId);
  const measure = fault?.measure;
  const measured: Read | undefined =
    measure === undefined || size === null ? undefined : { value: size, unit: measure.upTo.unit };
  const outside = reading?.verdict?.status === "stop" ? reading.verdict.says : "";
  const place = stepName(props.inHand.step, open.book.points);
  const text = discrepancyWords(place, fault, words);
  const nothing = still === null && text === "" && outside === "";

  const choose = (id: string | null) => {
    setStill(null);
    setFaultId(id === faultId ? null : id);
    setSize(null);
  };
  const save = async () => {
    setAsked(true);
    if (nothing) return;
    const discrepancy = still ?? raisedAs;
    const raised: readonly Draft[] =
      still !== null
        ? []
        : [
            {
              type: "discrepancy.raised",
              body: {
                discrepancy,
                words: text === "" ? `${place}: ${outside}` : text,
                walk: view.walk.id,
                check: check.id,
                point: check.point,
                ...(fault === undefined ? {} : { fault: fault.id }),
                ...(measured === undefined
                  ? reading?.read === undefined || reading.read === null
                    ? {}
                    : { measured: reading.read }
                  : { measured }),
                ...(check.jasc === undefined ? {} : { jasc: check.jasc }),
              },
            },
          ];
    const kept = await sayer.say(
      [...(reading?.drafts() ?? []), answered(view.walk.id, check.id, "not-right"), ...raised],
      {
        first: async () => {
          for (const photo of photos) {
            if (keptPhotos.current.has(photo)) continue;
            await keep.attachPhoto(open.registration, { kind: "discrepancy", id: discrepancy }, photo);
            keptPhotos.current.add(photo);
          }
        },
      },
    );
    if (kept) reading?.settle();
  };

  return (
    <>
      <div className="card-in panel">
        <PanelHead {...props} title="What is not right?" />
        <fieldset className="choices">
          <legend className="out-of-sight">What is not right</legend>
          {known.map((found) => (
            <button
              key={found.id}
              type="button"
              className="choice-wide"
              aria-pressed={still === found.id}
              onClick={() => {
                setStill(still === found.id ? null : found.id);
                setFaultId(null);
              }}
            >
              Still: {found.words}
            </button>
          ))}
          {check.faults.map((each) => (
            <button
              key={each.id}
              type="button"
              aria-pressed={each.id === faultId && still === null}
              onClick={() => choose(each.id)}
            >
              {each.name}
            </button>
          ))}
        </fieldset>
        {measure === undefined ? null : (
          <FaultSize
            measure={measure}
            size={size}
            last={lastOfFault(open.state, check.id, fault?.id ?? "")}
            wide={wide}
            onSize={setSize}
          />
        )}
        <label className="field in-words">
          <span>
            {check.faults.length === 0 ? "What is not right, in your words" : "In your words, if need be"}
          </span>
          <textarea
            rows={1}
            value={words}
            onChange={(event) => setWords(event.target.value)}
            maxLength={400}
          />
        </label>
      </div>
      <Trouble words={sayer.trouble} onDismiss={sayer.dismiss} />
      <NotRightStrip
        measure={measure}
        size={size}
        outside={outside}
        asks={asked && nothing}
        still={still !== null}
      />
      <div className="answers two">
        <PhotoButton
          label={photos.length === 0 ? "Photo" : `Photos: ${photos.length}`}
          onPhoto={(file) => {
            keep.preparePhoto(file);
            setPhotos([...photos, file]);
          }}
        />
        <button type="button" className="filled" aria-busy={sayer.busy} {...onTap(() => void save())}>
          Keep it
        </button>
      </div>
    </>
  );
}

type Measure = NonNullable<CheckCardProps["check"]["faults"][number]["measure"]>;

interface StripProps {
  readonly measure: Measure | undefined;
  readonly size: number | null;
  readonly outside: string;
  readonly asks: boolean;
  readonly still: boolean;
}

/** What keeping it will mean. Any discrepancy stops the flight until it is put right or there is a relief. */
function NotRightStrip({ measure, size, outside, asks, still }: StripProps) {
  const words = asks
    ? "Say what is not right: a tap or a word."
    : still
      ? "Already written down. Nothing new is raised."
      : measure !== undefined && size !== null
        ? faultRule(measure, size, undefined).says
        : outside !== ""
          ? outside
          : "Raises a discrepancy: it stops the flight until put right";
  return (
    <p className="verdict stop" role="status">
      <Mark status="stop" size_px={28} />
      <span>{words}</span>
    </p>
  );
}

interface FaultSizeProps {
  readonly measure: Measure;
  readonly size: number | null;
  readonly last: ReturnType<typeof lastOfFault>;
  readonly wide: boolean;
  readonly onSize: (size: number) => void;
}

function FaultSize({ measure, size, last, wide, onSize }: FaultSizeProps) {
  const [typing, setTyping] = useState(false);
  const rule = faultRule(measure, size, last);
  const { unit } = measure.upTo;
  const from = size ?? rule.values.last ?? rule.values.high ?? 0;
  const step = (way: 1 | -1) => onSize(Math.max(0, Number((from + way * rule.step).toFixed(rule.decimals))));
  const text = size === null ? "not measured" : withSymbol(figure(size, rule.decimals), unit);
  return (
    <>
      <div className="scale">
        <TwoPartRule
          values={rule.values}
          texts={rule.texts}
          step={rule.step}
          outside={rule.over}
          label={measure.of}
          valueText={text}
          nut_px={wide ? 21 : 19}
          onChange={onSize}
        />
      </div>
      <div className="entry entry-plain entry-size">
        <button type="button" className="step-button" aria-label="Less" onClick={() => step(-1)}>
          −
        </button>
        <button type="button" className="read" onClick={() => setTyping(true)}>
          <b className={size === null ? "unread" : undefined}>
            {size === null ? "–" : figure(size, rule.decimals)}
          </b>
          <span>
            {UNITS[unit].symbol}, {measure.of}
          </span>
          <span className="out-of-sight">{text}: type it</span>
        </button>
        <button type="button" className="step-button" aria-label="More" onClick={() => step(1)}>
          +
        </button>
      </div>
      {typing ? (
        <FigurePopup
          title={measure.of}
          units={[unit]}
          unit={unit}
          value={size}
          decimals={rule.decimals}
          step={rule.step}
          understand={(typed, chosen) =>
            understandFigure(typed, chosen, figure(from, rule.decimals), { least: 0 })
          }
          onSet={(next) => {
            onSize(next.value);
            setTyping(false);
          }}
          onClose={() => setTyping(false)}
        />
      ) : null}
    </>
  );
}
