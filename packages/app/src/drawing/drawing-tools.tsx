import { useState } from "react";

interface DrawingToolsProps {
  readonly folded: boolean;
  /** Turning is for plans. */
  readonly turns: boolean;
  /** Whether it stands as one stands; `undefined` when nobody stands. */
  readonly asIStand: boolean | undefined;
  readonly isHome: boolean;
  readonly onZoom: (factor_1: number) => void;
  readonly onTurn: (by_deg: number) => void;
  readonly onUp: (asIStand: boolean) => void;
  readonly onHome: () => void;
}

export const ZOOM_STEP_1 = 1.5;
export const TURN_STEP_deg = 45;

/** The buttons of a drawing: nearer, further, turned, whole. A finger can do the same, but nobody must know how. */
export function DrawingTools(props: DrawingToolsProps) {
  const { folded, turns, asIStand, isHome } = props;
  const [open, setOpen] = useState(!folded);
  return (
    <div className={folded ? "drawing-tools drawing-tools-folded" : "drawing-tools"}>
      {open ? (
        <>
          <button type="button" aria-label="Nearer" onClick={() => props.onZoom(ZOOM_STEP_1)}>
            +
          </button>
          <button type="button" aria-label="Further" onClick={() => props.onZoom(1 / ZOOM_STEP_1)}>
            −
          </button>
          {turns ? (
            <>
              <button type="button" aria-label="Turn left" onClick={() => props.onTurn(-TURN_STEP_deg)}>
                <TurnGlyph way={-1} />
              </button>
              <button type="button" aria-label="Turn right" onClick={() => props.onTurn(TURN_STEP_deg)}>
                <TurnGlyph way={1} />
              </button>
            </>
          ) : null}
          {asIStand === undefined ? null : (
            <button type="button" className="drawing-word" onClick={() => props.onUp(!asIStand)}>
              {asIStand ? "Nose up" : "As I stand"}
            </button>
          )}
          {isHome ? null : (
            <button type="button" className="drawing-word" onClick={props.onHome}>
              Back
            </button>
          )}
        </>
      ) : null}
      {folded ? (
        <button
          type="button"
          className="drawing-word"
          aria-expanded={open}
          onClick={() => {
            if (open && !isHome) props.onHome();
            setOpen(!open);
          }}
        >
          {open ? "Done" : "View"}
        </button>
      ) : null}
    </div>
  );
}

function TurnGlyph({ way }: { readonly way: 1 | -1 }) {
  return (
    <svg className="turn-glyph" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <path
        d="M4,11a6,6 0 1 0 6,-6M10,5l3,-3.4M10,5l3,3.4"
        transform={way === 1 ? "translate(20 0) scale(-1 1)" : undefined}
      />
    </svg>
  );
}
