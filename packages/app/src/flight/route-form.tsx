import { type UnitId, unitsOf, withSymbol } from "@witnessmark/engine";
import type { PlannedRoute, Read } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import { Popup } from "../frame/popup.tsx";
import { understandFigure } from "../screens/walk/understand-figure.ts";
import { understoodText } from "../words/figures.ts";

type RouteRead = "distance" | "time" | "level" | "alternateTime" | "tripFuel" | "taxiFuel" | "extraFuel";

interface Asked {
  readonly part: RouteRead;
  readonly name: string;
  readonly unit: UnitId;
  /** Other units that may be typed after the number. */
  readonly also: string;
  readonly example: string;
  readonly needed: boolean;
}

const ASKED: readonly Asked[] = [
  { part: "distance", name: "How far", unit: "NM", also: "NM, km or mi", example: "112", needed: true },
  { part: "time", name: "Take-off to landing", unit: "min", also: "min or h", example: "48", needed: true },
  {
    part: "level",
    name: "Cruise level, pressure altitude",
    unit: "ft",
    also: "ft or m",
    example: "9000",
    needed: true,
  },
  {
    part: "tripFuel",
    name: "Trip fuel, if not the book's",
    unit: "kg",
    also: "kg or lb",
    example: "128",
    needed: false,
  },
  {
    part: "taxiFuel",
    name: "Taxi fuel, if not the book's",
    unit: "kg",
    also: "kg or lb",
    example: "10",
    needed: false,
  },
  {
    part: "alternateTime",
    name: "On to the alternate",
    unit: "min",
    also: "min or h",
    example: "25",
    needed: false,
  },
  {
    part: "extraFuel",
    name: "Extra fuel you want left, on top of the reserve by the rule",
    unit: "kg",
    also: "kg or lb",
    example: "20",
    needed: false,
  },
];

interface RouteFormProps {
  readonly route: PlannedRoute | undefined;
  readonly onRoute: (route: PlannedRoute) => void;
  readonly onClose: () => void;
}

/** How far, how long, how high, and what is burnt on the way. */
export function RouteForm({ route, onRoute, onClose }: RouteFormProps) {
  const [texts, setTexts] = useState<Readonly<Partial<Record<RouteRead, string>>>>(() => textsOf(route));
  const [contingency, setContingency] = useState(
    route?.contingency_1 === undefined ? "" : String(Number((route.contingency_1 * 100).toPrecision(6))),
  );
  const [asked, setAsked] = useState(false);
  const read = (one: Asked) => {
    const text = texts[one.part]?.trim() ?? "";
    if (text === "")
      return one.needed
        ? { ok: false as const, message: `Type ${withSymbol(one.example, one.unit)}, or what it is` }
        : null;
    return typed(text, one);
  };
  const share =
    contingency.trim() === "" ? null : understandFigure(contingency, "percent", "5", { least: 0 });
  const send = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    const reads: Partial<Record<RouteRead, Read>> = {};
    for (const one of ASKED) {
      const found = read(one);
      if (found === null) continue;
      if (!found.ok) return;
      reads[one.part] = found.read;
    }
    const { distance, time, level, ...others } = reads;
    if (distance === undefined || time === undefined || level === undefined || share?.ok === false) return;
    const part: PlannedRoute = {
      distance,
      time,
      level,
      ...others,
      ...(share === null ? {} : { contingency_1: share.read.value / 100 }),
    };
    onRoute(part);
    onClose();
  };
  return (
    <Popup title="The trip" onClose={onClose}>
      <form className="popup-body" onSubmit={send} noValidate>
        {ASKED.map((one) => {
          const found = read(one);
          const wrong = found !== null && !found.ok && (asked || (texts[one.part] ?? "") !== "");
          return (
            <label key={one.part} className="field">
              <span>
                {one.name}, in {one.also}
              </span>
              <input
                value={texts[one.part] ?? ""}
                inputMode="decimal"
                autoComplete="off"
                aria-invalid={wrong}
                onChange={(event) => setTexts({ ...texts, [one.part]: event.target.value })}
              />
              {found?.ok === true ? <span>{understoodText(found.read)}</span> : null}
              {wrong && !found.ok ? <span className="stop">{found.message}</span> : null}
            </label>
          );
        })}
        <label className="field">
          <span>Contingency, in % of the planned trip fuel</span>
          <input
            value={contingency}
            inputMode="decimal"
            autoComplete="off"
            aria-invalid={share?.ok === false}
            onChange={(event) => setContingency(event.target.value)}
          />
          {share?.ok === false ? <span className="stop">{share.message}</span> : null}
        </label>
        <button type="submit" className="button filled tall full">
          Set
        </button>
      </form>
    </Popup>
  );
}

/** A figure in the unit that it was typed in; of a fuel also as a volume. */
function typed(text: string, { unit, example }: Asked) {
  const found = understandFigure(text, unit, example, { least: 0 });
  if (found.ok || !unitsOf("mass").includes(unit)) return found;
  const volume = understandFigure(text, "L", example, { least: 0 });
  return volume.ok && /[a-z]/i.test(text) ? volume : found;
}

function textsOf(route: PlannedRoute | undefined): Readonly<Partial<Record<RouteRead, string>>> {
  const texts: Partial<Record<RouteRead, string>> = {};
  for (const { part, unit } of ASKED) {
    const found = route?.[part];
    if (found === undefined) continue;
    texts[part] = found.unit === unit ? String(found.value) : withSymbol(String(found.value), found.unit);
  }
  return texts;
}
