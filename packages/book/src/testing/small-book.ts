/**
 * The text of a small book in which everything holds: a single-engine aircraft of no real type, two sides, every kind
 * of limit. For tests, here and in other packages; each bad book of `faults.test.ts` is this one with one line changed.
 */
export const smallBookText = `witnessmark: 1
revision: 3
issued: { on: 2026-11-09, by: A. Example }
notice: An invented aircraft. Fit for no real flight.

aircraft:
  registration: ZZ-SML
  type: Pipit 1
  description: small single-engine aircraft for tests
  engine: piston
  engines: 1
  gear: nose-wheel
  retractable: false
  seats: 4

geometry:
  fuselage:
    - [0.3, 0.2, 1.6, 1.2]
    - [1.0, 0.4, 1.8, 1.0]
    - [2.4, 0.55, 2.2, 0.9]
    - [4.0, 0.55, 2.2, 0.95]
    - [6.5, 0.2, 1.8, 1.3]
    - [7.4, 0.05, 1.7, 1.5]
  wing:
    root: { y: 0.5, leadingEdge: 2.4, chord: 1.6, z: 1.0 }
    tip: { y: 5.0, leadingEdge: 2.7, chord: 1.0, z: 1.4 }
    tipRound: 0.2
    flap: { from: 0.7, to: 2.8, hinge: 0.75 }
    aileron: { from: 3.0, to: 4.8, hinge: 0.75 }
    boot: { span: [0.9, 4.9], joints: [2.5] }
    tank: [0.9, 3.5]
  tailplane:
    root: { y: 0.1, leadingEdge: 6.3, chord: 0.9, z: 1.6 }
    tip: { y: 1.6, leadingEdge: 6.5, chord: 0.6, z: 1.6 }
    tipRound: 0.1
    elevator: 0.6
    boot: true
    trimTab: right
  fin:
    span: [5.8, 7.6]
    outline: [[5.6, 1.8], [6.9, 2.8], [7.5, 2.8], [7.6, 1.6]]
    hinge: [[7.1, 2.8], [7.2, 1.7]]
  propellers:
    - { x: 0.3, y: 0, z: 1.4, radius: 0.95, spinner: true }
  wheels:
    - { x: 1.2, y: 0, width: 0.15, diameter: 0.4, top: 1.0 }
    - { x: 3.5, y: 1.4, width: 0.18, diameter: 0.5, top: 1.0 }
    - { x: 3.5, y: -1.4, width: 0.18, diameter: 0.5, top: 1.0 }
  frames: [0.9]
  exhaust: 0.8
  windscreen: { x: [1.9, 2.4], halfWidth: 0.5, side: [[1.95, 1.95], [2.4, 2.15], [2.4, 1.85]] }
  windows: [[2.6, 3.2]]
  sideWindows: [{ x: [2.6, 3.2], z: [1.65, 2.0] }]
  door: { x: [3.3, 3.9], z: [1.1, 2.0], side: left }
  hatch: { x: [4.6, 5.0], halfWidth: 0.2 }

gauges:
  - { id: tyre-gauge, name: Tyre gauge TG-2, unit: bar, accuracy: 0.05 bar, resolution: 0.01 bar, range: [0 bar, 10 bar] }
  - { id: oxygen-gauge, name: Oxygen gauge, unit: psi, accuracy: 50 psi, resolution: 50 psi, range: [0 psi, 2200 psi] }
  - { id: dipstick, name: Oil dipstick, unit: US qt, accuracy: 0.25 US qt, resolution: 0.5 US qt, range: [0 US qt, 8 US qt] }

areas:
  - { id: cabin, name: Cabin }
  - { id: wings, name: Wings and wheels }
  - { id: engine, name: Engine }

stances:
  - { id: seat, name: Pilot's seat, place: [2.6, -0.2], facing: 0, posture: inside }
  - { id: right-wheel, name: Right main wheel, place: [2.0, 1.6], facing: 160, posture: crouch }
  - { id: nose, name: Nose, place: [-0.9, 0], facing: 180, posture: stand }
  - { id: left-wheel, name: Left main wheel, place: [2.0, -1.6], facing: 200, posture: crouch }

points:
  - { id: oxygen, name: Oxygen panel, area: cabin, side: centre, place: [2.8, 0.3, 1.2], stance: seat }
  - { id: right-main-tyre, name: Right main tyre, area: wings, side: right, place: [3.5, 1.4, 0.25], stance: right-wheel }
  - id: left-main-tyre
    name: Left main tyre
    area: wings
    side: left
    place: [3.5, -1.4, 0.25]
    stance: left-wheel
    mirrors: right-main-tyre
  - { id: oil, name: Oil filler, area: engine, side: centre, place: [0.9, 0.2, 1.7], stance: nose }

checks:
  - id: oxygen-pressure
    at: oxygen
    title: Read the oxygen pressure
    method: look
    shouldBe: At least 1500 psi at 21 °C.
    why: Without oxygen there is no way down from high up.
    hazard: { severity: high, ifMissed: No oxygen when it is needed. }
    evidence: reading
    walks: [first-of-day]
    holds: { until: [flown, maintenance], atMost: 24 h }
    reading:
      gauge: oxygen-gauge
      quantity: oxygen pressure
      temperatureOf: cylinder
      limit: { by: cylinder, gas: oxygen, at: 21 °C, low: 1500 psi, high: 1850 psi }
      outside: { status: caution, advice: Fly below 10 000 ft. }
      scale: [1000 psi, 2000 psi]
      step: 50 psi
    jasc: "3510"
  - id: tyre-look
    at: [right-main-tyre, left-main-tyre]
    title: Look at the tread
    method: look
    how: Turn the lamp along the tread.
    shouldBe: Even tread, no cord.
    why: A worn tyre bursts.
    faults:
      - { id: cut, name: Cut, measure: { of: length of the cut, allowed: 5 mm, upTo: 40 mm } }
      - { id: cord, name: Cord shows }
    hazard: { severity: medium, ifMissed: Tyre bursts on landing. }
    walks: [first-of-day, turnaround]
    holds: { until: [flown] }
  - id: tyre-pressure
    at: [right-main-tyre, left-main-tyre]
    title: Measure the pressure
    method: measure
    shouldBe: 3.0 bar at 15 °C.
    why: Soft, it runs hot.
    hazard: { severity: medium, ifMissed: Loss of control on the ground. }
    evidence: reading
    walks: [first-of-day]
    holds: { until: [flown], atMost: 3 d }
    after: [tyre-look]
    reading:
      gauge: tyre-gauge
      quantity: tyre pressure
      temperatureOf: tyre
      limit: { by: tyre, service: 3.0 bar, at: 15 °C }
      scale: [2.0 bar, 4.0 bar]
    least: 20 s
    jasc: "3244"
  - id: oil-level
    at: oil
    from: nose
    title: Read the dipstick
    method: measure
    shouldBe: Between the marks for the day's temperature.
    why: Without oil the engine stops.
    hazard: { severity: high, ifMissed: Engine failure. }
    evidence: reading
    walks: [first-of-day, turnaround, after-flight]
    holds: { until: [flown, maintenance] }
    reading:
      gauge: dipstick
      quantity: oil
      temperatureOf: oil
      limit:
        by: table
        rows:
          - { at: -20 °C, low: 5 US qt, high: 7.5 US qt }
          - { at: 15 °C, low: 5.5 US qt, high: 7.5 US qt }
          - { at: 40 °C, low: 6 US qt, high: 8 US qt }
      scale: [4 US qt, 8 US qt]
    jasc: "7932"
  - id: right-brake
    at: right-main-tyre
    title: Look at the brake for leaks
    method: look
    shouldBe: Dry.
    why: A brake without fluid does not hold.
    hazard: { severity: medium, ifMissed: No braking on one side. }
    walks: [first-of-day]
    holds: { until: [flown] }
    oneSided: The other brake is of another make and has no fluid.

groundGear:
  - { id: chocks, name: Chocks, count: 2, point: right-main-tyre, stance: right-wheel, stowedIn: [Baggage locker], why: They stop the aircraft. }

equipment:
  - { id: oxygen-set, name: Oxygen cylinder and masks, jasc: "3510", points: [oxygen] }
`;
