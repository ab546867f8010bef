import type { GroundGearItem } from "@witnessmark/book";
import { useState } from "react";
import { onTap } from "../../frame/on-tap.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { putOff } from "../../walk/put-off.ts";
import { piecesOffCount, postureText, type StepView, type WalkView } from "../../walk/walk-view.ts";
import { capital } from "../../words/capital.ts";
import { countOf, tally } from "../../words/figures.ts";
import { GearList } from "./gear-list.tsx";
import type { Sayer } from "./sayer.ts";
import { StanceRow } from "./stance-row.tsx";
import { StandCaution } from "./stand-caution.tsx";
import { useHeadingFocus } from "./use-heading-focus.ts";

interface GearCardProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView;
  readonly item: GroundGearItem;
  readonly sayer: Sayer;
  readonly wide: boolean;
}

const NOT_FITTED = "nowhere: it was not fitted";

/** `in the cover bag` stands as it is written; what was not fitted went nowhere. */
const inWords = (place: string): string => (place === NOT_FITTED ? "it was not fitted" : place);

/** Ground gear is counted off piece by piece, and says where each went; after a flight it is counted on. */
export function GearCard(props: GearCardProps) {
  const { open, view, inHand, item, sayer, wide } = props;
  const heading = useHeadingFocus();
  const fitting = view.walk.kind === "after-flight";
  const done = fitting
    ? Math.min(item.count, open.state.groundGear.get(item.id)?.fitted ?? 0)
    : piecesOffCount(open.state, view.walk, item.id);
  const rest = Math.max(0, item.count - done);
  const [count, setCount] = useState(rest);
  // the usual place is offered first, by name on the button: a tap says where it went, nothing is taken as said
  const [usual, ...others] = fitting ? [] : [...item.stowedIn, NOT_FITTED];
  const [whyOpen, setWhyOpen] = useState(false);
  const verb = fitting ? "on" : "off";

  const keepIn = (place: string) => {
    const body = { item: item.id, count, walk: view.walk.id };
    void sayer.say([
      fitting
        ? { type: "groundGear.fitted", body }
        : { type: "groundGear.removed", body: { ...body, stowedIn: place } },
    ]);
  };

  return (
    <>
      <div className="card-in">
        <header className="what">
          <p className="where">
            <b>{item.name}</b>, {postureText(inHand.stop)}
          </p>
          <h2 ref={heading} tabIndex={-1}>
            {fitting ? "Fit it and count it on" : "Take it off and count it"}
          </h2>
          <StandCaution open={open} stop={inHand.stop} />
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
        <dl className="parts">
          <dt>Should be</dt>
          <dd>
            {countOf(item.count, "piece")} {verb}
            {done === 0 ? "" : `; ${done} counted so far`}
          </dd>
          {wide || whyOpen ? (
            <>
              <dt>Why</dt>
              <dd>{item.why}</dd>
            </>
          ) : null}
        </dl>
        {rest > 1 ? (
          <fieldset className="counts-row">
            <legend className="legend">How many are {verb}</legend>
            {Array.from({ length: rest }, (_, i) => i + 1).map((each) => (
              <button key={each} type="button" aria-pressed={each === count} onClick={() => setCount(each)}>
                {each}
              </button>
            ))}
          </fieldset>
        ) : null}
        {fitting || rest === 0 || others.length === 0 ? null : (
          <fieldset className="choices stow">
            <legend className="legend">
              Or stowed elsewhere: a tap counts {count === 1 ? "it" : "them"} off
            </legend>
            {others.map((each) => (
              <button key={each} type="button" aria-busy={sayer.busy} {...onTap(() => keepIn(each))}>
                {each === NOT_FITTED ? "It was not fitted" : capital(each)}
              </button>
            ))}
          </fieldset>
        )}
        {fitting ? null : <GearList open={open} view={view} />}
      </div>
      <Trouble words={sayer.trouble} onDismiss={sayer.dismiss} />
      {wide ? <StanceRow open={open} view={view} inHand={inHand} /> : null}
      <div className="answers gear-answers">
        <button
          type="button"
          className="yes filled"
          aria-busy={sayer.busy}
          disabled={rest === 0}
          {...onTap(() => keepIn(usual ?? NOT_FITTED))}
        >
          {rest === 0
            ? `All ${verb}`
            : `${tally(count, "piece")} ${verb}${usual === undefined ? "" : `, ${inWords(usual)}`}`}
        </button>
        <button type="button" onClick={() => putOff(view.walk.id, item.id)}>
          Not yet
        </button>
      </div>
    </>
  );
}
