import { julianDayOf_d } from "./calendar.ts";

/**
 * Where the sun is, to about 0.01°: the low-accuracy method, which is also that of the NOAA calculator.
 *
 * Angles in degrees within this file, as the series are printed; `T` in Julian centuries from 2000. The difference
 * between dynamical and universal time (about 70 s) is left out: it moves the sun by less than 0.001°.
 *
 * @source Meeus, Astronomical Algorithms, 2nd edition (1998), chapters 12, 22 and 25
 */
const RAD = Math.PI / 180;
const sin = (angle_deg: number): number => Math.sin(angle_deg * RAD);
const cos = (angle_deg: number): number => Math.cos(angle_deg * RAD);

/** An angle on the circle, 0 up to 360°. */
const turned_deg = (angle_deg: number): number => ((angle_deg % 360) + 360) % 360;

export interface SunPosition {
  readonly meanLongitude_deg: number;
  readonly meanAnomaly_deg: number;
  readonly equationOfCentre_deg: number;
  readonly apparentLongitude_deg: number;
  readonly rightAscension_deg: number;
  readonly declination_deg: number;
}

export function sunPosition(julianDay_d: number): SunPosition {
  const T = (julianDay_d - 2_451_545) / 36_525;
  const meanLongitude_deg = turned_deg(280.46646 + T * (36_000.76983 + T * 0.0003032));
  const meanAnomaly_deg = turned_deg(357.52911 + T * (35_999.05029 - T * 0.0001537));
  const equationOfCentre_deg =
    (1.914602 - T * (0.004817 + T * 0.000014)) * sin(meanAnomaly_deg) +
    (0.019993 - 0.000101 * T) * sin(2 * meanAnomaly_deg) +
    0.000289 * sin(3 * meanAnomaly_deg);
  const node_deg = 125.04 - 1934.136 * T;
  const apparentLongitude_deg = turned_deg(
    meanLongitude_deg + equationOfCentre_deg - 0.00569 - 0.00478 * sin(node_deg),
  );
  const meanObliquity_deg = 23 + (26 + (21.448 - T * (46.815 + T * (0.00059 - T * 0.001813))) / 60) / 60;
  const obliquity_deg = meanObliquity_deg + 0.00256 * cos(node_deg);
  return {
    meanLongitude_deg,
    meanAnomaly_deg,
    equationOfCentre_deg,
    apparentLongitude_deg,
    rightAscension_deg: turned_deg(
      Math.atan2(cos(obliquity_deg) * sin(apparentLongitude_deg), cos(apparentLongitude_deg)) / RAD,
    ),
    declination_deg: Math.asin(sin(obliquity_deg) * sin(apparentLongitude_deg)) / RAD,
  };
}

/** Greenwich mean sidereal time. @source Meeus, chapter 12, (12.4) */
const siderealTime_deg = (julianDay_d: number): number => {
  const T = (julianDay_d - 2_451_545) / 36_525;
  return turned_deg(
    280.46061837 + 360.98564736629 * (julianDay_d - 2_451_545) + T * T * (0.000387933 - T / 38_710_000),
  );
};

/** A place on the earth: north and east above zero. */
export interface EarthPlace {
  readonly latitude_rad: number;
  readonly longitude_rad: number;
}

export interface SunInSky {
  /** Of the sun's centre above the horizon, without refraction. */
  readonly elevation_rad: number;
  /** Clockwise from true north, 0 up to a full turn. */
  readonly azimuth_rad: number;
  /** How far the sun is past its noon: −π up to π. */
  readonly hourAngle_rad: number;
}

/** @source Meeus, chapter 13 */
export function sunInSky({ latitude_rad, longitude_rad }: EarthPlace, julianDay_d: number): SunInSky {
  const { rightAscension_deg, declination_deg } = sunPosition(julianDay_d);
  const hourAngle_deg =
    turned_deg(siderealTime_deg(julianDay_d) + longitude_rad / RAD - rightAscension_deg + 180) - 180;
  const [sinLat, cosLat] = [Math.sin(latitude_rad), Math.cos(latitude_rad)];
  const height_1 = sinLat * sin(declination_deg) + cosLat * cos(declination_deg) * cos(hourAngle_deg);
  const azimuth_rad = Math.atan2(
    -cos(declination_deg) * sin(hourAngle_deg),
    sin(declination_deg) * cosLat - cos(declination_deg) * cos(hourAngle_deg) * sinLat,
  );
  return {
    elevation_rad: Math.asin(Math.min(1, Math.max(-1, height_1))),
    azimuth_rad: azimuth_rad < 0 ? azimuth_rad + 2 * Math.PI : azimuth_rad,
    hourAngle_rad: hourAngle_deg * RAD,
  };
}

export const sunElevationAt_rad = (place: EarthPlace, at_ms: number): number =>
  sunInSky(place, julianDayOf_d(at_ms)).elevation_rad;
