import type { Loading, LoadingSource, LoadLimits, Station, Tank } from "../schema/loading.ts";
import { given } from "./given.ts";

export function loadingInSI(source: LoadingSource): Loading {
  const { datum, mac, empty, stations, tanks, limits, groups, envelopes, gearMoment } = source;
  return {
    datum,
    ...given("mac", mac && { leadingEdge_m: mac.leadingEdge.valueSI, length_m: mac.length.valueSI }),
    empty: {
      weighedOn: empty.weighedOn,
      ...given("by", empty.by),
      ...massAndArm(empty),
      revisions: empty.revisions.map((revision) => ({
        on: revision.on,
        ...given("by", revision.by),
        ...massAndArm(revision),
        why: revision.why,
      })),
    },
    stations: stations.map(stationInSI),
    tanks: tanks.map(tankInSI),
    limits: limitsInSI(limits),
    groups: groups.map(({ id, name, stations: members, max }) => ({
      id,
      name,
      stations: members,
      max_kg: max.valueSI,
    })),
    envelopes: envelopes.map(({ id, name, points }) => ({
      id,
      name,
      points: points.map(({ arm, mass }) => ({ arm_m: arm.valueSI, mass_kg: mass.valueSI })),
    })),
    ...given("gearMoment_kgm", gearMoment?.valueSI),
  };
}

type Weighed = Pick<LoadingSource["empty"], "mass" | "arm" | "lateralArm">;

const massAndArm = ({ mass, arm, lateralArm }: Weighed) => ({
  mass_kg: mass.valueSI,
  arm_m: arm.valueSI,
  ...given("lateralArm_m", lateralArm?.valueSI),
});

function stationInSI(source: LoadingSource["stations"][number]): Station {
  const { id, name, kind, side, arm, lateralArm, max, floor, place, point, crew } = source;
  return {
    id,
    name,
    kind,
    side,
    arm_m: arm.valueSI,
    lateralArm_m: lateralArm?.valueSI ?? place[1],
    ...given("max_kg", max?.valueSI),
    ...given("floor", floor && { area_m2: floor.area.valueSI, max_kgPerM2: floor.maxPerSquareMetre.valueSI }),
    place,
    ...given("point", point),
    crew,
  };
}

function tankInSI(source: LoadingSource["tanks"][number]): Tank {
  const { id, name, side, capacity, unusable, arms, lateralArm, gauge, readAt, place } = source;
  return {
    id,
    name,
    side,
    capacity_m3: capacity.valueSI,
    unusable_m3: unusable.valueSI,
    arms: arms.map(({ volume, arm }) => ({ volume_m3: volume.valueSI, arm_m: arm.valueSI })),
    lateralArm_m: lateralArm?.valueSI ?? place[1],
    ...given("gauge", gauge),
    readAt,
    place,
  };
}

const limitsInSI = (source: LoadingSource["limits"]): LoadLimits => ({
  ...given("ramp_kg", source.ramp?.valueSI),
  takeOff_kg: source.takeOff.valueSI,
  ...given("zeroFuel_kg", source.zeroFuel?.valueSI),
  ...given("landing_kg", source.landing?.valueSI),
  ...given("minimumFlight_kg", source.minimumFlight?.valueSI),
  ...given("lateralMoment_kgm", source.lateralMoment?.valueSI),
  ...given("fuelImbalance_kg", source.fuelImbalance?.valueSI),
});
