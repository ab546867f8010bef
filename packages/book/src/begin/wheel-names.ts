import type { Geometry } from "../schema/geometry.ts";

type Wheel = Pick<Geometry["wheels"][number], "x" | "y" | "diameter">;

/** What a wheel is to the aircraft; `outer`: one under each wing of an aircraft that stands on the centre line. */
export interface WheelRole {
  readonly role: "main" | "nose" | "tail" | "outer";
  readonly side: "left" | "right" | "centre";
}

/** Nearer to the centre line a wheel is in the centre. */
const CENTRE_m = 0.1;

/** What each wheel is, told from where it stands and how large it is. */
export function wheelRoles(wheels: readonly Wheel[]): readonly WheelRole[] {
  const sideOf = ({ y }: Wheel) => (Math.abs(y) < CENTRE_m ? "centre" : y < 0 ? "left" : "right");
  const centre = wheels.filter((wheel) => sideOf(wheel) === "centre");
  const sides = wheels.filter((wheel) => sideOf(wheel) !== "centre");
  const largest = (of: readonly Wheel[]) => Math.max(0, ...of.map(({ diameter }) => diameter));
  const onCentre = sides.length === 0 || largest(centre) > largest(sides);
  const isMain = (wheel: Wheel) =>
    onCentre ? centre.includes(wheel) && wheel.diameter === largest(centre) : sides.includes(wheel);
  const mains = wheels.filter(isMain);
  const main_x_m = mains.reduce((sum, { x }) => sum + x, 0) / Math.max(1, mains.length);
  return wheels.map((wheel) => {
    const side = sideOf(wheel);
    if (isMain(wheel)) return { role: "main", side };
    if (side !== "centre") return { role: "outer", side };
    return { role: wheel.x < main_x_m ? "nose" : "tail", side };
  });
}

const SIDES = { left: "Left ", right: "Right ", centre: "" } as const;
const ROLES = { main: "main wheel", nose: "nose wheel", tail: "tail wheel", outer: "outer wheel" } as const;

/** What each wheel is called: "Right main wheel"; the second of a kind is numbered. */
export function wheelNames(wheels: readonly Wheel[]): readonly string[] {
  const seen = new Map<string, number>();
  return wheelRoles(wheels).map(({ role, side }) => {
    const words = `${SIDES[side]}${ROLES[role]}`;
    const name = words.charAt(0).toUpperCase() + words.slice(1);
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  });
}
