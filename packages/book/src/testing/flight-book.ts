import { smallBookText } from "./small-book.ts";

/** What the small book lacks for a flight, written so that a test can change one thing: each text is there once. */
const flightSections = `
loading:
  datum: 0.3 m ahead of the spinner.
  mac: { leadingEdge: 2.5 m, length: 1.4 m }
  empty:
    weighedOn: 2026-02-03
    by: Example Weighing
    mass: 800 kg
    arm: 2.80 m
    revisions:
      - { on: 2026-05-04, by: A. Example, mass: 806 kg, arm: 2.81 m, why: New radio. }
      - { on: 2026-06-07, by: A. Example, mass: 804 kg, arm: 2.805 m, why: Old radio out. }
  stations:
    - { id: pilot, name: Left front seat, kind: seat, side: left, arm: 2.75 m, max: 110 kg, place: [2.8, -0.25, 1.3], point: oxygen, crew: true }
    - { id: front, name: Right front seat, kind: seat, side: right, arm: 2.75 m, max: 111 kg, place: [2.8, 0.25, 1.3] }
    - { id: rear-left, name: Left rear seat, kind: seat, side: left, arm: 3.60 m, max: 112 kg, place: [3.6, -0.25, 1.3] }
    - { id: rear-right, name: Right rear seat, kind: seat, side: right, arm: 3.60 m, lateralArm: 0.24 m, max: 113 kg, place: [3.6, 0.25, 1.3] }
    - { id: bags, name: Bags, kind: bay, side: centre, arm: 4.30 m, max: 55 kg, floor: { area: 0.5 m², maxPerSquareMetre: 150 kg }, place: [4.3, 0, 1.3] }
    - { id: shelf, name: Shelf, kind: bay, side: centre, arm: 4.80 m, max: 15 kg, place: [4.8, 0, 1.5] }
  tanks:
    - id: left-tank
      name: Left tank
      side: left
      capacity: 100 L
      unusable: 2 L
      arms: [{ volume: 0 L, arm: 3.10 m }, { volume: 60 L, arm: 3.00 m }, { volume: 100 L, arm: 2.95 m }]
      lateralArm: -2.0 m
      gauge: dipstick
      readAt: [oil]
      place: [3.0, -2.0, 1.1]
    - id: right-tank
      name: Right tank
      side: right
      capacity: 101 L
      unusable: 3 L
      arms: [{ volume: 0 L, arm: 3.11 m }, { volume: 101 L, arm: 2.96 m }]
      lateralArm: 2.0 m
      place: [3.0, 2.0, 1.1]
  limits: { ramp: 1305 kg, takeOff: 1300 kg, zeroFuel: 1250 kg, landing: 1280 kg, minimumFlight: 850 kg, lateralMoment: 90 kg·m, fuelImbalance: 40 kg }
  groups:
    - { id: all-bags, name: All bags, stations: [bags, shelf], max: 60 kg }
  envelopes:
    - id: normal
      name: Normal
      points:
        - { arm: 2.60 m, mass: 790 kg }
        - { arm: 2.61 m, mass: 1000 kg }
        - { arm: 2.70 m, mass: 1299 kg }
        - { arm: 3.05 m, mass: 1298 kg }
        - { arm: 3.04 m, mass: 791 kg }

fuel:
  kind: avgas-100ll
  density15: 0.72 kg/L
  burn: { taxi: 3 kg, climb: 32 kg/h, cruise: 25 kg/h, hold: 20 kg/h, descent: 18 kg/h }
  freezingPoint: -58 °C
  minimumFuelTemperature: -50 °C
  order: [[left-tank, right-tank]]

oxygen:
  cylinder:
    nominal: 1400 L
    full: { pressure: 1800 psi, at: 21 °C }
    gauge: oxygen-gauge
    residual: 200 psi
    check: oxygen-pressure
  outlets:
    - { id: mask-1, seat: pilot, mask: constant-flow, flows: [{ cabinAltitude: 10000 ft, flow: 1.0 L/min }, { cabinAltitude: 18000 ft, flow: 2.5 L/min }] }
    - { id: mask-2, seat: front, mask: cannula, flows: [{ cabinAltitude: 10001 ft, flow: 0.8 L/min }] }

cabin:
  pressurised: true
  altitudes:
    - { level: 0 ft, cabin: 0.0 ft }
    - { level: 10002 ft, cabin: 2000 ft }
    - { level: 16000 ft, cabin: 6000 ft }
  maxDifferential: 4.0 psi
  emergencyDescent: { rate: 2500 ft/min, to: 10003 ft }

performance:
  tables:
    - id: take-off-roll
      quantity: take-off-ground-roll
      title: Take-off ground roll
      axes:
        - { name: mass, unit: kg, values: [1100, 1301] }
        - { name: headwind, unit: kt, values: [-10, 0, 15] }
      unit: m
      cells: [[410, 310, 220], [520, 400, null]]
    - id: take-off-total
      quantity: take-off-over-50ft
      title: Take-off over 50 ft
      axes:
        - { name: mass, unit: kg, values: [1100, 1301] }
        - { name: headwind, unit: kt, values: [-10, 0, 15] }
      unit: ft
      cells: [[2010, 1610, 1210], [2610, 2011, null]]
    - id: climb
      quantity: climb-gradient
      title: Climb gradient
      axes: [{ name: oat, unit: °C, values: [-20, 20] }, { name: slope, values: [-0.02, 0.02] }]
      unit: "%"
      cells: [[9.1, 9.2], [7.3, 7.4]]
    - id: stall
      quantity: stall-speed
      title: Stall speed, clean
      flaps: up
      axes: [{ name: pressureAltitude, unit: ft, values: [0, 5000] }]
      unit: kt
      cells: [51, 52]
  factors:
    - { id: wet-grass, quantities: [take-off-ground-roll, take-off-over-50ft], when: { surface: grass, condition: wet }, factor: 1.25, of: ground-roll, source: "Invented, as this book." }
    - { id: snow-climb, quantities: [climb-gradient], when: { condition: snow }, factor: 0.95, of: total, source: Invented }
  crosswind: { value: 17 kt, kind: demonstrated }
  tailwindMax: 10 kt
  approachFactor: 1.31
  slope: { max: 2 %, takeOffUp: 0.05, landingDown: 0.06 }
  headwindCredit: 0.5
  tailwindCharge: 1.5

iceProtection:
  known: false
  parts: [Pitot heat]
  conditions: "None; leave ice at once."

fields:
  - code: ZZAA
    name: Inland
    latitude: 10.5
    longitude: -20.5
    elevation: 120 ft
    magneticVariation: -3
    lights: true
    approach: false
    zone: Etc/UTC
    runways:
      - { name: "09", trueHeading: 88, tora: 900 m, toda: 950 m, asda: 920 m, lda: 880 m, slope: 0.5 %, surface: paved }
      - { name: "27", trueHeading: 268, tora: 901 m, toda: 951 m, asda: 921 m, lda: 881 m, slope: -0.5 %, surface: paved }
  - code: ZZAB
    name: Upland
    latitude: 10.7
    longitude: -20.7
    elevation: 1210 ft
    magneticVariation: -3.5
    lights: false
    approach: false
    zone: UTC
    runways:
      - { name: 18L, trueHeading: 176.5, tora: 600 m, toda: 600 m, asda: 600 m, lda: 599 m, slope: 1 %, surface: grass }
`;

/** The small book with every section that a flight needs. For tests, here and in other packages. */
export const flightBookText = `${smallBookText}${flightSections}`;
