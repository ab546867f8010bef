/*
 * How soon a slow leak is noticed. Series of readings every one to four days are made as a gauge would show them: its
 * steps, a temperature that is read only so well, a reading's own scatter. Every detector gets the threshold at which it
 * calls 5 % of sound series leaking over the same horizon, found on the same sound series; then leaks of several rates
 * begin, and the days until each detector notices are compared. The others are tuned to the case, as no one can be who
 * does not know the rate: the matched cumulative sum knows it, of the charts the best of several settings counts.
 * Limit: the mean delay of `slowLeak`, which knows no rate, is at most 1.15 times that of the best of them, in each case.
 * Run: node bench/leak.ts
 */
import { type LeakSettings, slowLeak } from "@witnessmark/engine";

const LIMIT_1 = 1.15;
const FALSE_ALARM_1 = 0.05;
const HORIZON_d = 240;
const SOUND_SERIES = 2000;
const LEAKS = 600;
/** Days after its beginning at which a leak that was not noticed is given up. */
const GIVEN_UP_d = 300;
const SEED = 20_261_125;

interface Gauge {
  readonly name: string;
  readonly pressure_psi: number;
  readonly resolution_psi: number;
  readonly temperatureSd_K: number;
  readonly readingSd_psi: number;
}

/** Invented gauges: of a tyre, of an oxygen cylinder. */
const GAUGES: readonly Gauge[] = [
  { name: "tyre", pressure_psi: 60, resolution_psi: 1, temperatureSd_K: 1.5, readingSd_psi: 0.2 },
  { name: "oxygen", pressure_psi: 1800, resolution_psi: 50, temperatureSd_K: 1.5, readingSd_psi: 5 },
];
/** In standard deviations of a reading for each day: from one in a month to one in a day. */
const RATES_sdPerDay = [0.03, 0.08, 0.2, 0.5, 1] as const;
/** How many readings there are at least before a leak begins; the charts take their target from these. */
const HISTORIES = [10, 40] as const;

const AMBIENT_psi = 14.696;
const REFERENCE_K = 288.15;
const WEATHER_SD_K = 8;

/** A generator of chance that gives the same in every run. @source mulberry32, public domain */
function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
const chance = chanceFrom(SEED);
const normal = (): number => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

const sdOf = ({ pressure_psi, resolution_psi, temperatureSd_K, readingSd_psi }: Gauge): number =>
  Math.hypot(
    resolution_psi / Math.sqrt(12),
    ((pressure_psi + AMBIENT_psi) * temperatureSd_K) / REFERENCE_K,
    readingSd_psi,
  );

interface Series {
  readonly t_d: readonly number[];
  /** In standard deviations of a reading. */
  readonly y: readonly number[];
}

/** What the gauge shows until a day, referred to one temperature. */
function readings(gauge: Gauge, leak_sdPerDay: number, begins_d: number, until_d: number): Series {
  const sd = sdOf(gauge);
  const filled_psi = gauge.pressure_psi + 2 * gauge.resolution_psi * chance();
  const t_d: number[] = [];
  const y: number[] = [];
  for (let day = 0; day <= until_d; day += 1 + Math.floor(4 * chance())) {
    const temperature_K = REFERENCE_K + WEATHER_SD_K * normal();
    const referred_psi = filled_psi - leak_sdPerDay * sd * Math.max(0, day - begins_d);
    const warm_psi = ((referred_psi + AMBIENT_psi) * temperature_K) / REFERENCE_K - AMBIENT_psi;
    const shown_psi =
      gauge.resolution_psi * Math.round((warm_psi + gauge.readingSd_psi * normal()) / gauge.resolution_psi);
    const read_K = temperature_K + gauge.temperatureSd_K * normal();
    t_d.push(day);
    y.push((((shown_psi + AMBIENT_psi) * REFERENCE_K) / read_K - AMBIENT_psi) / sd);
  }
  return { t_d, y };
}

/** What a detector makes of a series: its statistic after each reading. */
interface Detector {
  readonly name: string;
  /** Whether it is told the rate; then its threshold is found for each rate. */
  readonly knowsRate?: true;
  readonly statistic: (series: Series, leak_sdPerDay: number, history: number) => readonly number[];
}

/** The largest over all beginnings of what a ramp's products with the readings and with itself give. */
function overRamps(
  { t_d, y }: Series,
  worth: (product: number, square: number) => number,
): readonly number[] {
  const statistic: number[] = [];
  let total = 0;
  for (const [at, value] of y.entries()) {
    total += value;
    const mean = total / (at + 1);
    let [count, sumT, sumTT, sumY, sumTY, most] = [0, 0, 0, 0, 0, 0];
    for (let place = at; place >= 0; place -= 1) {
      const time = (t_d[place] ?? 0) - (t_d[at] ?? 0);
      const away = mean - (y[place] ?? 0);
      const ramp = sumT - count * time;
      const square = sumTT - 2 * time * sumT + count * time * time - ramp ** 2 / (at + 1);
      if (square > 1e-9) most = Math.max(most, worth(sumTY - time * sumY, square));
      count += 1;
      sumT += time;
      sumTT += time * time;
      sumY += away;
      sumTY += time * away;
    }
    statistic.push(most);
  }
  return statistic;
}

/** How far each reading lies below the mean of the history; nothing while that is gathered. */
function below(y: readonly number[], history: number): readonly number[] {
  const target = y.slice(0, history).reduce((sum, value) => sum + value / history, 0);
  return y.map((value, index) => (index < history ? 0 : target - value));
}

function running(
  values: readonly number[],
  step: (last: number, value: number) => number,
): readonly number[] {
  let last = 0;
  return values.map((value) => {
    last = step(last, value);
    return last;
  });
}

function slopeOfLatest({ t_d, y }: Series, width: number): readonly number[] {
  return y.map((_, at) => {
    const from = at + 1 - width;
    if (from < 0) return 0;
    const times = t_d.slice(from, at + 1);
    const values = y.slice(from, at + 1);
    const middle_d = times.reduce((sum, time) => sum + time / width, 0);
    const square = times.reduce((sum, time) => sum + (time - middle_d) ** 2, 0);
    return (
      -times.reduce((sum, time, index) => sum + (time - middle_d) * (values[index] ?? 0), 0) /
      Math.sqrt(square)
    );
  });
}

const SETTINGS: LeakSettings = { direction: "falling", horizon_d: HORIZON_d, falseAlarm_1: FALSE_ALARM_1 };
const watch = ({ t_d, y }: Series) => {
  const found = slowLeak(t_d, y, 1, SETTINGS);
  if (found.kind === "too-few") throw new Error("leak: a series of fewer than five readings");
  return found;
};

const OURS: Detector = { name: "ours", statistic: (series) => watch(series).evidence_d };

const PEERS: readonly Detector[] = [
  {
    name: "matched cumulative sum",
    knowsRate: true,
    statistic: (series, rate) =>
      overRamps(series, (product, square) => rate * product - (rate ** 2 * square) / 2),
  },
  {
    name: "likelihood ratio of a ramp",
    statistic: (series) =>
      overRamps(series, (product, square) => (product > 0 ? product ** 2 / square / 2 : 0)),
  },
  ...[0.1, 0.25, 0.5, 1, 1.5].map(
    (slack): Detector => ({
      name: `cumulative sum, slack ${slack}`,
      statistic: ({ y }, _rate, history) =>
        running(below(y, history), (sum, value) => Math.max(0, sum + value - slack)),
    }),
  ),
  ...[0.03, 0.05, 0.1, 0.2, 0.4, 0.7].map(
    (weight): Detector => ({
      name: `weighted average, weight ${weight}`,
      statistic: ({ y }, _rate, history) =>
        running(below(y, history), (average, value) => weight * value + (1 - weight) * average),
    }),
  ),
  ...[5, 8, 12, 20, 30].map(
    (width): Detector => ({
      name: `slope of the last ${width}`,
      statistic: (series) => slopeOfLatest(series, width),
    }),
  ),
];

interface Case {
  readonly sound: readonly Series[];
  readonly leaks: readonly (Series & { readonly begins_d: number })[];
  readonly rate: number;
  readonly history: number;
}

const mostOf = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), 0);

function thresholdOf({ statistic }: Detector, { sound, rate, history }: Case): number {
  const most = sound.map((series) => mostOf(statistic(series, rate, history))).sort((a, b) => a - b);
  return most[Math.ceil(sound.length * (1 - FALSE_ALARM_1)) - 1] ?? 0;
}

/** Mean days from the beginning of a leak to its alarm, and their standard error; alarms before it do not count. */
function delayOf({ statistic }: Detector, { leaks, rate, history }: Case, threshold: number) {
  const delays_d = leaks.flatMap((leak) => {
    const at = statistic(leak, rate, history).findIndex((value) => value > threshold);
    const found_d = at < 0 ? leak.begins_d + GIVEN_UP_d : (leak.t_d[at] ?? 0);
    return found_d < leak.begins_d ? [] : [found_d - leak.begins_d];
  });
  const mean_d = delays_d.reduce((sum, delay) => sum + delay / delays_d.length, 0);
  const variance = delays_d.reduce((sum, delay) => sum + (delay - mean_d) ** 2, 0) / (delays_d.length - 1);
  return { mean_d, error_d: Math.sqrt(variance / delays_d.length) };
}

let worst_1 = 0;
for (const gauge of GAUGES) {
  const sound = Array.from({ length: SOUND_SERIES }, () => readings(gauge, 0, 0, HORIZON_d));
  const called = sound.filter((series) => watch(series).alarmAt !== undefined).length / sound.length;
  console.log(
    `\n${gauge.name}: as it comes, ${(100 * called).toFixed(1)} % of ${sound.length} sound series are called leaking within ${HORIZON_d} d`,
  );
  for (const history of HISTORIES) {
    const thresholds = new Map<Detector, number>();
    for (const rate of RATES_sdPerDay) {
      const leaks = Array.from({ length: LEAKS }, () => {
        // the mean gap between readings is 2.5 days; none of a history is after the beginning
        const begins_d = 4 * history * (0.75 + 0.25 * chance());
        return { begins_d, ...readings(gauge, rate, begins_d, begins_d + GIVEN_UP_d) };
      });
      const one: Case = { sound, leaks, rate, history };
      const delays = [OURS, ...PEERS].map((detector) => {
        const threshold = detector.knowsRate
          ? thresholdOf(detector, one)
          : (thresholds.get(detector) ?? thresholdOf(detector, one));
        thresholds.set(detector, threshold);
        return { name: detector.name, ...delayOf(detector, one, threshold) };
      });
      const [ours, ...peers] = delays;
      const best = peers.reduce((a, b) => (b.mean_d < a.mean_d ? b : a));
      const byChart = ["cumulative sum, ", "weighted average, ", "slope of ", "likelihood ratio"].map(
        (kind) =>
          peers.filter(({ name }) => name.startsWith(kind)).reduce((a, b) => (b.mean_d < a.mean_d ? b : a)),
      );
      if (ours === undefined) throw new Error("leak: no detector");
      const ratio_1 = ours.mean_d / best.mean_d;
      worst_1 = Math.max(worst_1, ratio_1);
      console.log(
        `${gauge.name}, ${rate} sd a day (${(rate * sdOf(gauge)).toPrecision(2)} psi), after ${history} readings: ` +
          `ours ${ours.mean_d.toFixed(1)} ± ${ours.error_d.toFixed(1)} d, best ${best.mean_d.toFixed(1)} d (${best.name}), ratio ${ratio_1.toFixed(3)}; ` +
          byChart.map(({ name, mean_d }) => `${name} ${mean_d.toFixed(1)}`).join(", "),
      );
    }
  }
}
console.log(`\nworst ratio ${worst_1.toFixed(3)}, limit ${LIMIT_1}`);
process.exitCode = worst_1 > 0 && worst_1 <= LIMIT_1 ? 0 : 1;
