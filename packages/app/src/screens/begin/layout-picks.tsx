import type { Figures } from "@witnessmark/book";
import { withEngines } from "./first-figures.ts";
import "./layout-picks.css";

/** How the aircraft is put together. */
export interface Layout {
  readonly wing: Figures["wing"];
  readonly tail: Figures["tail"];
  readonly gear: Figures["gear"];
  readonly retractable: boolean;
  readonly engine: Figures["engine"];
  readonly engines: Figures["engines"];
}

interface LayoutPicksProps {
  readonly said: Layout;
  readonly onSay: (part: Partial<Layout>) => void;
}

/** The choices that make the layout: each is one tap. */
export function LayoutPicks({ said, onSay }: LayoutPicksProps) {
  return (
    <>
      <Pick
        legend="Wing"
        options={{ high: "High", mid: "Middle", low: "Low" }}
        chosen={said.wing}
        onPick={(wing) => onSay({ wing })}
      />
      <Pick
        legend="Tail"
        options={{ conventional: "Low tailplane", t: "T tail", v: "V tail" }}
        chosen={said.tail}
        onPick={(tail) => onSay({ tail })}
      />
      <Pick
        legend="Stands on"
        options={{ "nose-wheel": "Nose wheel", "tail-wheel": "Tail wheel", "mono-wheel": "One wheel" }}
        chosen={said.gear}
        onPick={(gear) => onSay({ gear })}
      />
      <Pick
        legend="Landing gear"
        options={{ fixed: "Fixed", retractable: "Comes up" }}
        chosen={said.retractable ? "retractable" : "fixed"}
        onPick={(gear) => onSay({ retractable: gear === "retractable" })}
      />
      <Pick
        legend="Engines"
        options={{ none: "None", one: "One", two: "Two" }}
        chosen={COUNTS[said.engines]}
        onPick={(count) => onSay(withEngines(({ none: 0, one: 1, two: 2 } as const)[count], said.engine))}
      />
      {said.engine === "none" ? null : (
        <Pick
          legend="Kind of engine"
          options={{ piston: "Piston", turboprop: "Turboprop" }}
          chosen={said.engine}
          onPick={(engine) => onSay({ engine })}
        />
      )}
    </>
  );
}

const COUNTS = { 0: "none", 1: "one", 2: "two" } as const;

interface PickProps<Option extends string> {
  readonly legend: string;
  readonly options: Readonly<Record<Option, string>>;
  readonly chosen: Option;
  readonly onPick: (option: Option) => void;
}

/** One of a few, each a button. */
export function Pick<Option extends string>({ legend, options, chosen, onPick }: PickProps<Option>) {
  return (
    <fieldset>
      <legend className="legend">{legend}</legend>
      <div className="choices layout-choices">
        {/* the keys are those of the options */}
        {(Object.keys(options) as Option[]).map((option) => (
          <button key={option} type="button" aria-pressed={option === chosen} onClick={() => onPick(option)}>
            {options[option]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
